package rootcast.app.climate.rest;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.List;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.SetupMaps;
import rootcast.climate.LightSource;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingRemark;
import rootcast.climate.ReadingUnit;
import rootcast.climate.Sensor;
import rootcast.saying.Saying;

/**
 * A reading as it is sent.
 *
 * @param unit   UCUM code
 * @param at     when it was measured
 * @param sensor code of the sensor that measured it, whose offset is then added; none for the house as such
 */
record ReadingWire(
        @Nullable String house,
        @Nullable String quantity,
        @Nullable Double value,
        @Nullable String unit,
        @Nullable OffsetDateTime at,
        @Nullable String sensor) {

    /** Why a reading is not taken, in words for whoever runs the sensor. */
    static final class Unusable extends Exception {
        private static final long serialVersionUID = 1L;

        private final transient Saying why;

        Unusable(String reason, Saying why) {
            super(reason, null, false, false);
            this.why = why;
        }

        Saying why() {
            return why;
        }
    }

    /** Whether its value can be true is for the use case to say, which keeps what cannot be. */
    HouseReading reading(SetupMaps.Maps setup) throws Unusable {
        if (house == null || quantity == null || value == null || unit == null || at == null) {
            throw new Unusable(
                    "house, quantity, value, unit and at are all needed", Saying.of(ReadingRemark.INCOMPLETE));
        }
        if (!setup.houses().contains(house)) {
            throw new Unusable("there is no house '" + house + "'", Saying.of(ReadingRemark.UNKNOWN_HOUSE, house));
        }
        Quantity what = Quantity.ofWireName(quantity)
                .orElseThrow(() -> new Unusable(
                        "quantity '" + quantity + "' is none of "
                                + Arrays.stream(Quantity.values())
                                        .map(Quantity::wireName)
                                        .collect(Collectors.joining(", ")),
                        Saying.of(ReadingRemark.UNKNOWN_QUANTITY, quantity)));
        List<ReadingUnit> forms = sensor == null ? ReadingUnit.of(what) : ReadingUnit.ofSensor(what);
        ReadingUnit read = ReadingUnit.ofUcum(unit)
                .filter(forms::contains)
                .orElseThrow(() -> new Unusable(
                        "unit '" + unit + "' is none of the UCUM codes for " + quantity + ": "
                                + forms.stream().map(ReadingUnit::ucum).collect(Collectors.joining(", ")),
                        Saying.of(ReadingRemark.OTHER_UNIT, unit)));
        Instant measuredAt = at.toInstant().truncatedTo(ChronoUnit.MICROS);
        if (sensor == null) {
            return new HouseReading(
                    house, what, HouseReading.NO_SENSOR, measuredAt, read.kept(value, LightSource.SUN), value, unit);
        }
        Sensor by = setup.byCode().get(sensor);
        if (by == null || !by.house().equals(house) || by.quantity() != what || by.unit() != read) {
            throw new Unusable(
                    "there is no sensor '%s' for %s in house '%s' that shows %s"
                            .formatted(sensor, quantity, house, unit),
                    Saying.of(ReadingRemark.UNKNOWN_SENSOR, sensor));
        }
        return new HouseReading(house, what, sensor, measuredAt, by.kept(value), value, unit);
    }
}
