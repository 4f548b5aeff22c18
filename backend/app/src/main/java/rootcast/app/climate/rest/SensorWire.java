package rootcast.app.climate.rest;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;
import rootcast.app.site.Code;
import rootcast.climate.LightSource;
import rootcast.climate.MoistureScale;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingUnit;
import rootcast.climate.Sensor;
import rootcast.saying.Fault;

/**
 * A sensor as it is sent.
 *
 * @param unit        UCUM code of what it shows
 * @param topic       MQTT topic it reports under; none if it reports otherwise
 * @param offset      added to what it shows, in {@code unit}; 0 unless given
 * @param lightSource what lights it, for lux and foot-candles; the sun unless given
 * @param levels      what it shows at the moisture levels 1 to 5, in {@code unit} after the offset; for a moisture probe that
 *                    shows water content, tension or millivolts, and for no other
 */
record SensorWire(
        @Code String code,
        @Code String house,
        @NotNull String quantity,
        @NotNull String unit,
        @Nullable @Size(min = 1, max = 400) String topic,
        @Nullable Double offset,
        @Nullable String lightSource,
        @Nullable List<@NotNull Double> levels) {

    static SensorWire of(Sensor sensor) {
        return new SensorWire(
                sensor.code(),
                sensor.house(),
                sensor.quantity().wireName(),
                sensor.unit().ucum(),
                sensor.topic(),
                sensor.offset(),
                sensor.light().wireName(),
                sensor.scale() == null ? null : sensor.scale().shown());
    }

    private static final double MOST_OFFSET = 1e6;

    Sensor sensor() {
        Quantity measured = Quantity.ofWireName(quantity)
                .orElseThrow(() -> Problem.malformed(
                        "quantity",
                        Fault.ONE_OF,
                        Arrays.stream(Quantity.values()).map(Quantity::wireName).toList()));
        List<ReadingUnit> forms = ReadingUnit.ofSensor(measured);
        ReadingUnit shown = ReadingUnit.ofUcum(unit)
                .filter(forms::contains)
                .orElseThrow(() -> Problem.malformed(
                        "unit",
                        Fault.ONE_OF,
                        forms.stream().map(ReadingUnit::ucum).toList()));
        LightSource light = lightSource == null
                ? LightSource.SUN
                : LightSource.ofWireName(lightSource)
                        .orElseThrow(() -> Problem.malformed(
                                "lightSource",
                                Fault.ONE_OF,
                                Arrays.stream(LightSource.values())
                                        .map(LightSource::wireName)
                                        .toList()));
        if (topic != null && (topic.contains("#") || topic.contains("+") || topic.startsWith("$"))) {
            throw Problem.malformed("topic", Fault.NOT_A_TOPIC);
        }
        if (offset != null && (!Double.isFinite(offset) || Math.abs(offset) > MOST_OFFSET)) {
            throw Problem.malformed("offset", Fault.BETWEEN, -MOST_OFFSET, MOST_OFFSET);
        }
        return new Sensor(
                code, house, measured, shown, topic, offset == null ? 0 : offset, light, scale(measured, shown));
    }

    private @Nullable MoistureScale scale(Quantity measured, ReadingUnit shown) {
        if (!Sensor.needsScale(measured, shown)) {
            if (levels != null) {
                throw Problem.malformed("levels", Fault.NO_SCALE_FOR_UNIT, unit);
            }
            return null;
        }
        boolean clear = levels != null
                && levels.size() == MoistureScale.LEVELS
                && levels.stream().allMatch(Double::isFinite)
                && MoistureScale.goesOneWay(levels);
        if (!clear) {
            throw Problem.malformed("levels", levels == null ? Fault.MISSING : Fault.NOT_FIVE_LEVELS);
        }
        return new MoistureScale(levels);
    }
}
