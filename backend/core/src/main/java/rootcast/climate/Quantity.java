package rootcast.climate;

import java.util.Arrays;
import java.util.Optional;

/** What a sensor in a house measures, with the span outside which a value can only be a fault. */
public enum Quantity {
    /** At the stem base, in the medium of the cell. */
    MEDIUM_TEMPERATURE("medium-temperature", -10, 60),
    AIR_TEMPERATURE("air-temperature", -40, 70);

    private final String wireName;
    private final double leastC;
    private final double mostC;

    Quantity(String wireName, double leastC, double mostC) {
        this.wireName = wireName;
        this.leastC = leastC;
        this.mostC = mostC;
    }

    /**
     * A value that cannot be true.
     *
     * @param leastC least plausible value, °C, itself plausible
     * @param mostC  greatest plausible value, °C, itself plausible
     */
    public record Implausible(Quantity quantity, double celsius, double leastC, double mostC) {

        @Override
        public String toString() {
            return "%s %s °C is outside %s to %s °C".formatted(quantity.wireName(), celsius, leastC, mostC);
        }
    }

    /** The refusal of {@code celsius}; empty if it is plausible. A value that is not a number is refused. */
    public Optional<Implausible> refusalOf(double celsius) {
        return celsius >= leastC && celsius <= mostC
                ? Optional.empty()
                : Optional.of(new Implausible(this, celsius, leastC, mostC));
    }

    public String wireName() {
        return wireName;
    }

    public static Optional<Quantity> ofWireName(String wireName) {
        return Arrays.stream(values())
                .filter(quantity -> quantity.wireName.equals(wireName))
                .findFirst();
    }
}
