package rootcast.app.climate.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HourlyClimate;
import rootcast.app.climate.HouseNow;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Sites;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.app.site.store.Places;
import rootcast.saying.Fault;
import rootcast.site.House;

/** All houses at a glance, in one answer. */
@Path("/api/climate")
public class ClimateResource {

    private static final Duration USUAL = Duration.ofDays(1);
    private static final Duration MOST = Duration.ofDays(7);

    @Inject
    HouseNow now;

    @Inject
    HouseHours hours;

    @Inject
    HourlyClimate climate;

    @Inject
    Places places;

    @Inject
    Caller caller;

    record SeriesWire(String quantity, String unit, List<HourlyClimate.Hour> hours) {}

    /**
     * @param quantities as {@code GET /api/houses/{code}/now}
     * @param series     as {@code GET /api/houses/{code}/climate}, of each quantity asked for
     */
    record HouseGlanceWire(String house, List<HouseNow.Value> quantities, List<SeriesWire> series) {}

    record GlanceWire(List<HouseGlanceWire> houses) {}

    /**
     * The newest good reading of each quantity, and the hours of those asked for: of the last day unless asked otherwise.
     *
     * @param site       all sites without
     * @param quantities measured or derived, parted by commas; no hours without
     */
    @GET
    @Needs(Right.READ)
    public GlanceWire glance(
            @RestQuery @Nullable String site,
            @RestQuery @Nullable String quantities,
            @RestQuery @Nullable String from,
            @RestQuery @Nullable String to) {
        Sites theirs = caller.mayRead();
        if (site != null && (places.site(site).isEmpty() || !theirs.includes(site))) {
            throw Problem.notFound(Thing.SITE, site);
        }
        List<AskedQuantity> asked = quantities == null || quantities.isEmpty()
                ? List.of()
                : Arrays.stream(quantities.split(","))
                        .distinct()
                        .map(AskedQuantity::of)
                        .toList();
        Instant until = to == null ? climate.asOf() : HouseClimateResource.instant("to", to);
        Instant since = from == null ? until.minus(USUAL) : HouseClimateResource.instant("from", from);
        if (!since.isBefore(until) || Duration.between(since, until).compareTo(MOST) > 0) {
            throw Problem.malformed("from", Fault.TOO_LONG_A_SPAN, MOST.toDays());
        }
        List<House> houses = places.houses().stream()
                .filter(house -> theirs.includes(house.site()))
                .filter(house -> site == null || house.site().equals(site))
                .toList();
        Map<String, List<HouseNow.Value>> values =
                now.of(houses.stream().map(House::code).toList());
        List<HouseGlanceWire> glances = new ArrayList<>(houses.size());
        for (House house : houses) {
            List<SeriesWire> series = asked.stream()
                    .map(each -> new SeriesWire(each.wireName(), each.unit(), hours.of(house, each, since, until)))
                    .toList();
            glances.add(new HouseGlanceWire(house.code(), values.get(house.code()), series));
        }
        return new GlanceWire(glances);
    }
}
