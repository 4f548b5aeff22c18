package rootcast.feed;

import java.util.Arrays;
import java.util.Optional;

/**
 * Units of volume and weight of both systems, by UCUM code.
 *
 * <p>Source: US gallon 231 in³ = 3.785411784 L, fluid ounce 1/128 of it, avoirdupois pound 0.45359237 kg = 16 oz, exact by
 * definition.
 */
public enum Measure {
    LITRE("L", Kind.VOLUME, 1),
    MILLILITRE("mL", Kind.VOLUME, 0.001),
    US_GALLON("[gal_us]", Kind.VOLUME, 3.785411784),
    US_FLUID_OUNCE("[foz_us]", Kind.VOLUME, 3.785411784 / 128),
    GRAM("g", Kind.WEIGHT, 1),
    KILOGRAM("kg", Kind.WEIGHT, 1_000),
    OUNCE("[oz_av]", Kind.WEIGHT, 453.59237 / 16),
    POUND("[lb_av]", Kind.WEIGHT, 453.59237);

    public enum Kind {
        /** In litres. */
        VOLUME,
        /** In grams. */
        WEIGHT
    }

    private final String ucum;
    private final Kind kind;
    private final double inBaseUnits;

    Measure(String ucum, Kind kind, double inBaseUnits) {
        this.ucum = ucum;
        this.kind = kind;
        this.inBaseUnits = inBaseUnits;
    }

    public String ucum() {
        return ucum;
    }

    public Kind kind() {
        return kind;
    }

    /** Litres of a volume, grams of a weight. */
    public double toBase(double amount) {
        return amount * inBaseUnits;
    }

    /** From litres or grams. */
    public double ofBase(double baseAmount) {
        return baseAmount / inBaseUnits;
    }

    public static Optional<Measure> ofUcum(String ucum) {
        return Arrays.stream(values()).filter(unit -> unit.ucum.equals(ucum)).findFirst();
    }
}
