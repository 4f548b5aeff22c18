package rootcast.app.whatif;

import java.time.Instant;
import java.util.List;

/** What would be otherwise. */
public record Question(List<Setpoint> setpoints, List<Move> moves) {

    /** @param mediumC °C */
    public record Setpoint(String house, double mediumC, Instant from) {}

    public record Move(String batch, String house, Instant from) {}
}
