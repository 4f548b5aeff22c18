package rootcast.app.climate;

import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rootcast.app.climate.store.Readings;
import rootcast.app.site.HousePlans;
import rootcast.climate.HourlySeries;
import rootcast.climate.Quantity;
import rootcast.climate.SetpointPlan;
import rootcast.outlook.HouseCurves;
import rootcast.site.House;

/**
 * Takes readings into the hours of every house and keeps the development curves over them, so that an hour more costs an
 * hour. Belongs to the projector's thread; what it gives out in a {@link ClimateSnapshot} is nobody's.
 */
public final class ClimateProjection {

    private final Map<HouseQuantity, HourlySeries> series = new HashMap<>();
    private final HouseCurves curves = new HouseCurves(Instant.EPOCH);
    private final Map<String, SetpointPlan> plans = new HashMap<>();
    private final Set<HouseQuantity> touched = new HashSet<>();
    private Map<String, House> houses = Map.of();
    private HousePlans planned = HousePlans.NONE;
    private Map<HouseQuantity, HourlySeries> published = Map.of();

    public HouseCurves curves() {
        return curves;
    }

    /** Takes the houses and their plans as they are now, and gives those whose batches have other dates because of it. */
    public Set<String> houses(Collection<House> now, HousePlans plansNow) {
        Map<String, House> byCode = new HashMap<>();
        Set<String> replanned = new HashSet<>();
        for (House house : now) {
            byCode.put(house.code(), house);
            SetpointPlan plan = plansNow.setpointsOf(house);
            if (!plan.equals(plans.put(house.code(), plan))) {
                curves.house(house.code(), series(house.code(), Quantity.MEDIUM_TEMPERATURE), plan);
                replanned.add(house.code());
            }
        }
        if (!plansNow.moves().equals(planned.moves())) {
            byCode.keySet().forEach(house -> curves.usualMove(house, plansNow.moveFrom(house)));
            replanned.addAll(byCode.keySet()); // a move may lead on from wherever a batch comes to stand
        }
        houses = Map.copyOf(byCode);
        planned = plansNow;
        return replanned;
    }

    /** Takes an hour as stored, before any curve has been asked for. */
    public void restore(Readings.Hour hour) {
        HouseQuantity of = new HouseQuantity(hour.house(), hour.quantity());
        series(of).put(HourlySeries.hourOf(hour.hourStart()), hour.totalMicro(), hour.readings());
        touched.add(of);
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

    public ClimateSnapshot snapshot(Instant asOf) {
        if (!touched.isEmpty()) {
            Map<HouseQuantity, HourlySeries> next = new HashMap<>(published);
            touched.forEach(of -> next.put(of, series(of).snapshot()));
            published = Map.copyOf(next);
            touched.clear();
        }
        return new ClimateSnapshot(asOf, houses, planned, published);
    }

    private HourlySeries series(String house, Quantity quantity) {
        return series(new HouseQuantity(house, quantity));
    }

    private HourlySeries series(HouseQuantity of) {
        return series.computeIfAbsent(of, any -> new HourlySeries());
    }
}
