package rootcast.app.climate.rest;

import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.climate.Quantity;
import rootcast.climate.TemperatureUnit;
import rootcast.ledger.EntryRules;

/**
 * A reading as it is sent.
 *
 * @param unit UCUM code
 * @param at   when it was measured
 */
record ReadingWire(
        @Nullable String house,
        @Nullable String quantity,
        @Nullable Double value,
        @Nullable String unit,
        @Nullable OffsetDateTime at) {

    private static final int OLDEST_YEARS = 5;

    /** Why a reading is not taken, in words for whoever runs the sensor. */
    static final class Unusable extends Exception {
        private static final long serialVersionUID = 1L;

        Unusable(String reason) {
            super(reason, null, false, false);
        }
    }

    HouseReading reading(Set<String> houses, Instant now) throws Unusable {
        if (house == null || quantity == null || value == null || unit == null || at == null) {
            throw new Unusable("house, quantity, value, unit and at are all needed");
        }
        if (!houses.contains(house)) {
            throw new Unusable("there is no house '" + house + "'");
        }
        Quantity what = Quantity.ofWireName(quantity)
                .orElseThrow(() -> new Unusable("quantity '" + quantity + "' is none of "
                        + Arrays.stream(Quantity.values())
                                .map(Quantity::wireName)
                                .collect(Collectors.joining(", "))));
        TemperatureUnit read = TemperatureUnit.ofUcum(unit)
                .orElseThrow(() -> new Unusable("unit '" + unit + "' is none of the UCUM codes "
                        + Arrays.stream(TemperatureUnit.values())
                                .map(TemperatureUnit::ucum)
                                .collect(Collectors.joining(", "))));
        double celsius = read.toCelsius(value);
        var implausible = what.refusalOf(celsius);
        if (implausible.isPresent()) {
            throw new Unusable(implausible.get().toString());
        }
        Instant measuredAt = at.toInstant().truncatedTo(ChronoUnit.MICROS);
        if (measuredAt.isAfter(now.plus(EntryRules.CLOCK_TOLERANCE))) {
            throw new Unusable(measuredAt + " is still to come; it is " + now + " here");
        }
        if (measuredAt.isBefore(now.minus(OLDEST_YEARS * 365L, ChronoUnit.DAYS))) {
            throw new Unusable(measuredAt + " is over " + OLDEST_YEARS + " years ago");
        }
        return new HouseReading(house, what, measuredAt, celsius);
    }
}
