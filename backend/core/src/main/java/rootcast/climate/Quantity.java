package rootcast.climate;

import java.util.Arrays;
import java.util.Optional;

/** What a sensor in a house measures, in which unit it is kept, and the span outside which a value can only be a fault. */
public enum Quantity {
    /** At the stem base, in the medium of the cell; °C. */
    MEDIUM_TEMPERATURE("medium-temperature", ReadingUnit.CELSIUS, -10, 60),
    /** °C. */
    AIR_TEMPERATURE("air-temperature", ReadingUnit.CELSIUS, -40, 70),
    /** Percent. */
    RELATIVE_HUMIDITY("relative-humidity", ReadingUnit.PERCENT, 0, 100),
    /** Photosynthetic photon flux density, µmol/m²/s; the brightest sun between clouds stays below 2 500. */
    LIGHT("light", ReadingUnit.PHOTON_FLUX, 0, 2_500),
    /** On the trade's scale of 1 (dry) to 5 (free water on top), by hand or from a sensor mapped to it. */
    MEDIUM_MOISTURE("medium-moisture", ReadingUnit.LEVEL, 1, 5),
    /** Electrical conductivity, mS/cm. */
    EC("ec", ReadingUnit.MILLISIEMENS, 0, 20);

    private final String wireName;
    private final ReadingUnit unit;
    private final double least;
    private final double most;

    Quantity(String wireName, ReadingUnit unit, double least, double most) {
        this.wireName = wireName;
        this.unit = unit;
        this.least = least;
        this.most = most;
    }

    /**
     * A value that cannot be true.
     *
     * @param value in the quantity's own unit, like {@code least} and {@code most}
     * @param least least plausible value, itself plausible
     * @param most  greatest plausible value, itself plausible
     */
    public record Implausible(Quantity quantity, double value, double least, double most) {

        @Override
        public String toString() {
            return "%s %s is outside %s to %s (%s)"
                    .formatted(
                            quantity.wireName(),
                            value,
                            least,
                            most,
                            quantity.unit().ucum());
        }
    }

    /** The refusal of {@code value}; empty if it is plausible. A value that is not a number is refused. */
    public Optional<Implausible> refusalOf(double value) {
        return value >= least && value <= most
                ? Optional.empty()
                : Optional.of(new Implausible(this, value, least, most));
    }

    public String wireName() {
        return wireName;
    }

    /** The unit that its values are kept and shown in. */
    public ReadingUnit unit() {
        return unit;
    }

    public static Optional<Quantity> ofWireName(String wireName) {
        return Arrays.stream(values())
                .filter(quantity -> quantity.wireName.equals(wireName))
                .findFirst();
    }
}
