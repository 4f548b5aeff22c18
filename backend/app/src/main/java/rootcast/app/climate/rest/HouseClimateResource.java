package rootcast.app.climate.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HourlyClimate;
import rootcast.app.climate.store.Readings;
import rootcast.app.problem.Problem;
import rootcast.app.site.store.Places;
import rootcast.climate.Quantity;

/** What a house's sensors have said. */
@Path("/api/houses/{code}")
public class HouseClimateResource {

    private static final Duration USUAL = Duration.ofDays(7);
    private static final Duration MOST = Duration.ofDays(400);

    @Inject
    HourlyClimate climate;

    @Inject
    Readings readings;

    @Inject
    Places places;

    record ClimateWire(String house, String quantity, String unit, List<HourlyClimate.Hour> hours) {}

    record NowWire(String house, List<QuantityNow> quantities) {}

    record QuantityNow(String quantity, double valueC, Instant at) {}

    @GET
    @Path("climate")
    public ClimateWire hours(
            @RestPath String code,
            @RestQuery @Nullable String from,
            @RestQuery @Nullable String to,
            @RestQuery @Nullable String quantity) {
        known(code);
        Quantity asked = quantity == null
                ? Quantity.MEDIUM_TEMPERATURE
                : Quantity.ofWireName(quantity)
                        .orElseThrow(() -> Problem.malformed(
                                "quantity",
                                "is '" + quantity + "'; known are "
                                        + Arrays.stream(Quantity.values())
                                                .map(Quantity::wireName)
                                                .toList()));
        Instant until = to == null ? climate.asOf() : instant("to", to);
        Instant since = from == null ? until.minus(USUAL) : instant("from", from);
        if (!since.isBefore(until) || Duration.between(since, until).compareTo(MOST) > 0) {
            throw Problem.malformed("from", "must lie before 'to', by " + MOST.toDays() + " days at most");
        }
        return new ClimateWire(code, asked.wireName(), "Cel", climate.hours(code, asked, since, until));
    }

    @GET
    @Path("now")
    public NowWire now(@RestPath String code) {
        known(code);
        List<QuantityNow> now = new ArrayList<>();
        for (Quantity quantity : Quantity.values()) {
            readings.newest(code, quantity)
                    .ifPresent(
                            reading -> now.add(new QuantityNow(quantity.wireName(), reading.celsius(), reading.at())));
        }
        return new NowWire(code, now);
    }

    private void known(String code) {
        if (places.house(code).isEmpty()) {
            throw Problem.notFound("house", code);
        }
    }

    private static Instant instant(String field, String text) {
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeParseException notATime) {
            throw Problem.malformed(field, "is '" + text + "'; write it as 2026-03-01T08:00:00Z");
        }
    }
}
