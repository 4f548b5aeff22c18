package rootcast.climate;

import org.jspecify.annotations.Nullable;

/**
 * A sensor and what its numbers mean.
 *
 * @param topic  MQTT topic that it reports under; null if it reports otherwise
 * @param unit   that its numbers come in; one of {@link ReadingUnit#of} its quantity
 * @param offset added to what it shows to make it true, in {@code unit}
 * @param light  what lights it; matters to lux and foot-candles only
 */
public record Sensor(
        String code,
        String house,
        Quantity quantity,
        ReadingUnit unit,
        @Nullable String topic,
        double offset,
        LightSource light) {

    public Sensor {
        if (!ReadingUnit.of(quantity).contains(unit)) {
            throw new IllegalArgumentException("%s does not come in %s".formatted(quantity.wireName(), unit.ucum()));
        }
    }

    /** What it shows as a value of its quantity, in the quantity's unit. */
    public double kept(double shown) {
        return unit.kept(shown + offset, light);
    }
}
