package rootcast.app.whatif;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Crop;

/**
 * What would be otherwise.
 *
 * @param crop with the profile that it would have; null if every crop keeps its own
 */
public record Question(
        List<Setpoint> setpoints,
        List<Move> moves,
        @Nullable Crop crop) {

    public Question(List<Setpoint> setpoints, List<Move> moves) {
        this(setpoints, moves, null);
    }

    /** Another profile for one crop. */
    public static Question profile(Crop crop) {
        return new Question(List.of(), List.of(), crop);
    }

    /** @param mediumC °C */
    public record Setpoint(String house, double mediumC, Instant from) {}

    public record Move(String batch, String house, Instant from) {}
}
