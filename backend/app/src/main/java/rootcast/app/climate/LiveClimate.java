package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Predicate;
import rootcast.app.climate.store.Readings;
import rootcast.app.site.PlannedSetpoint;
import rootcast.climate.HourlySeries;
import rootcast.climate.Quantity;
import rootcast.climate.SetpointPlan;
import rootcast.outlook.HouseCurves;
import rootcast.site.House;

/**
 * The hourly series of every house and the development curves over them. Changed only by {@code flow}, one thread at a
 * time.
 */
@ApplicationScoped
public class LiveClimate {

    private final Map<String, Map<Quantity, HourlySeries>> series = new HashMap<>();
    private final Map<String, House> houseOf = new HashMap<>();
    private final Map<String, SetpointPlan> plans = new HashMap<>();
    private List<PlannedSetpoint> planned = List.of();
    private HouseCurves curves = new HouseCurves(Instant.EPOCH);

    public void clear() {
        series.clear();
        plans.clear();
        curves = new HouseCurves(Instant.EPOCH);
    }

    public HouseCurves curves() {
        return curves;
    }

    public HourlySeries series(String house, Quantity quantity) {
        return series.computeIfAbsent(house, any -> new EnumMap<>(Quantity.class))
                .computeIfAbsent(quantity, any -> new HourlySeries());
    }

    /** Takes the houses and their plans as they are now, and gives those whose curves are others because of it. */
    public Set<String> houses(Collection<House> houses, Collection<PlannedSetpoint> setpoints) {
        planned = List.copyOf(setpoints);
        Set<String> replanned = new HashSet<>();
        for (House house : houses) {
            houseOf.put(house.code(), house);
            SetpointPlan plan = plan(house, change -> true);
            if (!plan.equals(plans.put(house.code(), plan))) {
                curves.house(house.code(), series(house.code(), Quantity.MEDIUM_TEMPERATURE), plan);
                replanned.add(house.code());
            }
        }
        return replanned;
    }

    private SetpointPlan plan(House house, Predicate<PlannedSetpoint> counts) {
        SetpointPlan plan = SetpointPlan.of(house.mediumSetpointC());
        for (PlannedSetpoint change : planned) {
            if (change.house().equals(house.code()) && counts.test(change)) {
                plan = plan.with(new SetpointPlan.Change(change.from(), change.mediumC()));
            }
        }
        return plan;
    }

    /**
     * Curves of their own over copies of some houses' series, for a past instant; with what was planned by {@code
     * plannedBy}. Call it holding the live lock; what it gives may then be used without.
     *
     * @param then hours as they were known then, where that differs from now
     */
    public HouseCurves copied(
            Collection<String> houses, Instant asOf, Instant plannedBy, Collection<Readings.Hour> then) {
        HouseCurves copied = new HouseCurves(asOf);
        for (String code : houses) {
            HourlySeries medium = series(code, Quantity.MEDIUM_TEMPERATURE).copy();
            then.stream()
                    .filter(hour -> hour.house().equals(code))
                    .filter(hour -> hour.quantity() == Quantity.MEDIUM_TEMPERATURE)
                    .forEach(hour ->
                            medium.put(HourlySeries.hourOf(hour.hourStart()), hour.totalMicro(), hour.readings()));
            copied.house(
                    code,
                    medium,
                    plan(houseOf.get(code), change -> !change.recordedAt().isAfter(plannedBy)));
        }
        return copied;
    }

    /**
     * The same to be walked through time: at each moment with what was planned by then. Call it holding the live lock;
     * what it gives may then be used without.
     */
    public PastWalk walk(Collection<String> houses) {
        Map<House, HourlySeries> copies = new HashMap<>();
        houses.forEach(code -> copies.put(
                houseOf.get(code), series(code, Quantity.MEDIUM_TEMPERATURE).copy()));
        return new PastWalk(copies, planned);
    }

    public void restore(Readings.Hour hour) {
        series(hour.house(), hour.quantity())
                .put(HourlySeries.hourOf(hour.hourStart()), hour.totalMicro(), hour.readings());
    }

    /**
     * Takes hours as they are stored now and gives the houses whose past has changed with them, and from when on: hours
     * without readings that were bridged from the new ones lie before them. Taking an hour twice changes nothing.
     */
    public Map<String, Instant> add(List<Readings.Hour> hours) {
        Map<String, Instant> earliest = new HashMap<>();
        for (Readings.Hour hour : hours) {
            HourlySeries of = series(hour.house(), hour.quantity());
            long number = HourlySeries.hourOf(hour.hourStart());
            double before = of.meanC(number);
            restore(hour);
            boolean changed = Double.compare(before, of.meanC(number)) != 0;
            if (changed && hour.quantity() == Quantity.MEDIUM_TEMPERATURE) {
                earliest.merge(hour.house(), hour.hourStart(), (a, b) -> a.isBefore(b) ? a : b);
            }
        }
        earliest.forEach(curves::changed);
        long hourNow = HourlySeries.hourOf(curves.asOf());
        earliest.values().removeIf(at -> HourlySeries.hourOf(at) >= hourNow);
        earliest.replaceAll(
                (house, at) -> HourlySeries.startOf(curves.climateOf(house).firstAffectedBy(HourlySeries.hourOf(at))));
        return earliest;
    }
}
