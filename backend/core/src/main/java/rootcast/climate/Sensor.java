package rootcast.climate;

import org.jspecify.annotations.Nullable;

/**
 * A sensor and what its numbers mean.
 *
 * @param topic  MQTT topic that it reports under; null if it reports otherwise
 * @param unit   that its numbers come in; one of {@link ReadingUnit#ofSensor} its quantity
 * @param offset added to what it shows to make it true, in {@code unit}
 * @param light  what lights it; matters to lux and foot-candles only
 * @param scale  of a moisture probe that shows no level; null for every other
 */
public record Sensor(
        String code,
        String house,
        Quantity quantity,
        ReadingUnit unit,
        @Nullable String topic,
        double offset,
        LightSource light,
        @Nullable MoistureScale scale) {

    public Sensor {
        if (!ReadingUnit.ofSensor(quantity).contains(unit)) {
            throw new IllegalArgumentException("%s does not come in %s".formatted(quantity.wireName(), unit.ucum()));
        }
        if (needsScale(quantity, unit) != (scale != null)) {
            throw new IllegalArgumentException(
                    "a moisture scale belongs to a probe that shows no level, and to no other");
        }
    }

    /** Whether numbers in this unit mean nothing of the quantity without a {@link MoistureScale}. */
    public static boolean needsScale(Quantity quantity, ReadingUnit unit) {
        return !ReadingUnit.of(quantity).contains(unit);
    }

    /** What it shows as a value of its quantity, in the quantity's unit. */
    public double kept(double shown) {
        double trueShown = shown + offset;
        return scale == null ? unit.kept(trueShown, light) : scale.level(trueShown);
    }
}
