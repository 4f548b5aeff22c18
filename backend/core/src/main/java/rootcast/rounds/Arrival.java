package rootcast.rounds;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * How a box of cuttings came.
 *
 * @param boxC         temperature inside of the box, °C; null if nobody measured
 * @param standbyHours from coming in to sticking; null if nobody knows
 */
public record Arrival(
        Condition condition,
        @Nullable Double boxC,
        @Nullable Double standbyHours) {

    public enum Condition {
        FRESH,
        WILTED,
        DAMAGED;

        public String wireName() {
            return name().toLowerCase(Locale.ROOT);
        }

        public static Optional<Condition> ofWireName(String wireName) {
            return Arrays.stream(values())
                    .filter(condition -> condition.wireName().equals(wireName))
                    .findFirst();
        }
    }
}
