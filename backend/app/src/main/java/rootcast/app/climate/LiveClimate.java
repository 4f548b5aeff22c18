package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.Collection;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rootcast.app.climate.store.Readings;
import rootcast.climate.HourlySeries;
import rootcast.climate.Quantity;
import rootcast.outlook.HouseCurves;
import rootcast.site.House;

/**
 * The hourly series of every house and the development curves over them. Changed only by {@code flow}, one thread at a
 * time.
 */
@ApplicationScoped
public class LiveClimate {

    private final Map<String, Map<Quantity, HourlySeries>> series = new HashMap<>();
    private HouseCurves curves = new HouseCurves(Instant.EPOCH);

    public void clear() {
        series.clear();
        curves = new HouseCurves(Instant.EPOCH);
    }

    public HouseCurves curves() {
        return curves;
    }

    public HourlySeries series(String house, Quantity quantity) {
        return series.computeIfAbsent(house, any -> new EnumMap<>(Quantity.class))
                .computeIfAbsent(quantity, any -> new HourlySeries());
    }

    /** Takes the houses as they are now; a changed set-point makes the house's curves anew. */
    public void houses(Collection<House> houses) {
        for (House house : houses) {
            curves.house(house.code(), series(house.code(), Quantity.MEDIUM_TEMPERATURE), house.mediumSetpointC());
        }
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
