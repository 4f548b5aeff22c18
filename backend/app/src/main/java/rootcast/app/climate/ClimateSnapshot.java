package rootcast.app.climate;

import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import rootcast.app.climate.store.Readings;
import rootcast.app.site.HousePlans;
import rootcast.climate.HourlySeries;
import rootcast.climate.Quantity;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.UsualMove;
import rootcast.site.House;

/**
 * The hours of every house and what the houses are set to, as of one moment. Whoever asks for curves gets curves of their
 * own over them.
 *
 * @param asOf    hours that have ended by then are known
 * @param houses  by code
 * @param planned for the houses, past and to come
 * @param series  by house; each a snapshot that nobody writes to
 */
public record ClimateSnapshot(
        Instant asOf, Map<String, House> houses, HousePlans planned, Map<HouseQuantity, HourlySeries> series) {

    private static final HourlySeries NO_HOURS = new HourlySeries().snapshot();

    public HourlySeries series(String house, Quantity quantity) {
        return series.getOrDefault(new HouseQuantity(house, quantity), NO_HOURS);
    }

    /** Curves of these houses as of now. */
    public HouseCurves curves(Collection<String> of) {
        return curves(of, asOf, planned, List.of());
    }

    /**
     * Curves of these houses for a past instant, with what was planned by {@code plannedBy}.
     *
     * @param then hours as they were known then, where that differs from now
     */
    public HouseCurves curves(Collection<String> of, Instant when, Instant plannedBy, Collection<Readings.Hour> then) {
        return curves(of, when, planned.saidBy(plannedBy), then);
    }

    private HouseCurves curves(Collection<String> of, Instant when, HousePlans plans, Collection<Readings.Hour> other) {
        HouseCurves curves = new HouseCurves(when);
        for (String code : andWhereTheyGo(of, plans)) {
            HourlySeries medium = series(code, Quantity.MEDIUM_TEMPERATURE);
            List<Readings.Hour> others = other.stream()
                    .filter(hour -> hour.house().equals(code) && hour.quantity() == Quantity.MEDIUM_TEMPERATURE)
                    .toList();
            if (!others.isEmpty()) {
                HourlySeries changed = medium.copy();
                others.forEach(
                        hour -> changed.put(HourlySeries.hourOf(hour.hourStart()), hour.totalMicro(), hour.readings()));
                medium = changed;
            }
            curves.house(code, medium, plans.setpointsOf(houses.get(code)));
            curves.usualMove(code, plans.moveFrom(code));
        }
        return curves;
    }

    /** With the houses to which batches of these usually go on. */
    private static Set<String> andWhereTheyGo(Collection<String> houses, HousePlans plans) {
        Set<String> all = new LinkedHashSet<>(houses);
        for (String house : houses) {
            UsualMove next = plans.moveFrom(house);
            while (next != null && all.add(next.to())) {
                next = plans.moveFrom(next.to());
            }
        }
        return all;
    }

    /** Curves of these houses as of another moment and with hours that are newer than these. */
    public HouseCurves curvesWith(Collection<String> of, Instant when, Collection<Readings.Hour> newer) {
        return curves(of, when, planned, newer);
    }

    /** The same hours under another set-up. */
    public ClimateSnapshot with(Collection<House> housesNow, HousePlans plannedNow) {
        return new ClimateSnapshot(
                asOf,
                housesNow.stream().collect(Collectors.toUnmodifiableMap(House::code, Function.identity())),
                plannedNow,
                series);
    }

    /** Curves to be walked through time: at each moment with what was planned by then. */
    public PastWalk walk(Collection<String> of) {
        Map<House, HourlySeries> hours = new HashMap<>();
        andWhereTheyGo(of, planned)
                .forEach(code -> hours.put(houses.get(code), series(code, Quantity.MEDIUM_TEMPERATURE)));
        return new PastWalk(hours, planned);
    }
}
