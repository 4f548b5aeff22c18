package rootcast.app.climate.rest;

import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;
import rootcast.app.site.Code;
import rootcast.climate.LightSource;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingUnit;
import rootcast.climate.Sensor;

/**
 * A sensor as it is sent.
 *
 * @param unit        UCUM code of what it shows
 * @param topic       MQTT topic it reports under; none if it reports otherwise
 * @param offset      added to what it shows, in {@code unit}; 0 unless given
 * @param lightSource what lights it, for lux and foot-candles; the sun unless given
 */
record SensorWire(
        @Code String code,
        @Code String house,
        @NotNull String quantity,
        @NotNull String unit,
        @Nullable @Size(min = 1, max = 400) String topic,
        @Nullable Double offset,
        @Nullable String lightSource) {

    static SensorWire of(Sensor sensor) {
        return new SensorWire(
                sensor.code(),
                sensor.house(),
                sensor.quantity().wireName(),
                sensor.unit().ucum(),
                sensor.topic(),
                sensor.offset(),
                sensor.light().wireName());
    }

    Sensor sensor() {
        Quantity measured = Quantity.ofWireName(quantity)
                .orElseThrow(() -> Problem.malformed(
                        "quantity",
                        "is '" + quantity + "'; known are "
                                + Arrays.stream(Quantity.values())
                                        .map(Quantity::wireName)
                                        .toList()));
        List<ReadingUnit> forms = ReadingUnit.of(measured);
        ReadingUnit shown = ReadingUnit.ofUcum(unit)
                .filter(forms::contains)
                .orElseThrow(() -> Problem.malformed(
                        "unit",
                        "is '" + unit + "'; " + quantity + " comes in "
                                + forms.stream().map(ReadingUnit::ucum).toList()));
        LightSource light = lightSource == null
                ? LightSource.SUN
                : LightSource.ofWireName(lightSource)
                        .orElseThrow(() -> Problem.malformed(
                                "lightSource",
                                "is '" + lightSource + "'; known are "
                                        + Arrays.stream(LightSource.values())
                                                .map(LightSource::wireName)
                                                .toList()));
        if (topic != null && (topic.contains("#") || topic.contains("+") || topic.startsWith("$"))) {
            throw Problem.malformed("topic", "is '" + topic + "'; it must be one topic, without + or # or a leading $");
        }
        if (offset != null && (!Double.isFinite(offset) || Math.abs(offset) > 1e6)) {
            throw Problem.malformed("offset", "must be a number up to a million");
        }
        return new Sensor(code, house, measured, shown, topic, offset == null ? 0 : offset, light);
    }
}
