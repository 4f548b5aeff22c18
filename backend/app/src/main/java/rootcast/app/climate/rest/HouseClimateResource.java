package rootcast.app.climate.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.ArrayList;
import java.util.List;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HourlyClimate;
import rootcast.app.climate.HouseFlags;
import rootcast.app.climate.HouseNow;
import rootcast.app.climate.HouseQuantity;
import rootcast.app.climate.SensorHealth;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.app.site.store.Places;
import rootcast.climate.Quantity;
import rootcast.saying.Fault;
import rootcast.site.House;

/** What a house's sensors have said. */
@Path("/api/houses/{code}")
@Needs(Right.READ)
public class HouseClimateResource {

    private static final Duration USUAL = Duration.ofDays(7);
    private static final Duration MOST = Duration.ofDays(400);

    @Inject
    Caller caller;

    @Inject
    HourlyClimate climate;

    @Inject
    HouseHours houseHours;

    @Inject
    HouseFlags flags;

    @Inject
    HouseNow now;

    @Inject
    SensorHealth health;

    @Inject
    Places places;

    /** @param hours of a daily light integral one a day, at the site's midnight */
    record ClimateWire(
            String house, String quantity, String unit, List<HourlyClimate.Hour> hours, List<HouseFlags.Line> flags) {}

    record NowWire(String house, List<HouseNow.Value> quantities) {}

    @GET
    @Path("climate")
    public ClimateWire hours(
            @RestPath String code,
            @RestQuery @Nullable String from,
            @RestQuery @Nullable String to,
            @RestQuery @Nullable String quantity) {
        House house = known(code);
        AskedQuantity asked = AskedQuantity.of(quantity);
        Instant until = to == null ? climate.asOf() : instant("to", to);
        Instant since = from == null ? until.minus(USUAL) : instant("from", from);
        if (!since.isBefore(until) || Duration.between(since, until).compareTo(MOST) > 0) {
            throw Problem.malformed("from", Fault.TOO_LONG_A_SPAN, MOST.toDays());
        }
        List<HouseFlags.Line> lines = new ArrayList<>();
        for (Quantity source : asked.sources()) {
            lines.addAll(flags.lines(new HouseQuantity(code, source), since, until));
        }
        List<HourlyClimate.Hour> hours = houseHours.of(house, asked, since, until);
        if (asked.derived() == AskedQuantity.Derived.DAILY_LIGHT) {
            lines.addAll(AskedQuantity.moreThanTheSun(hours));
        }
        return new ClimateWire(code, asked.wireName(), asked.unit(), hours, lines);
    }

    @GET
    @Path("now")
    public NowWire now(@RestPath String code) {
        known(code);
        return new NowWire(code, now.of(code));
    }

    /** How it stands with each sensor of the house. */
    @GET
    @Path("sensors")
    public List<SensorHealth.Health> sensors(@RestPath String code) {
        known(code);
        return health.of(code);
    }

    private House known(String code) {
        return places.house(code)
                .filter(each -> caller.mayRead().includes(each.site()))
                .orElseThrow(() -> Problem.notFound(Thing.HOUSE, code));
    }

    static Instant instant(String field, String text) {
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeParseException notATime) {
            throw Problem.malformed(field, Fault.NOT_AN_INSTANT);
        }
    }
}
