package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import rootcast.climate.FilledSeries;
import rootcast.climate.HourSource;
import rootcast.climate.HourlySeries;
import rootcast.climate.Quantity;

/** A house's hours as they were measured or are taken to have been. */
@ApplicationScoped
public class HourlyClimate {

    @Inject
    LiveClimate climate;

    @Inject
    LiveLock live;

    /** @param source measured or filled */
    public record Hour(Instant at, double value, String source) {}

    public Instant asOf() {
        return climate.curves().asOf();
    }

    /** Hours that have ended; only medium temperature is bridged where readings are missing, since dates rest on it. */
    public List<Hour> hours(String house, Quantity quantity, Instant fromInclusive, Instant untilExclusive) {
        return live.holding(() -> {
            HourlySeries series = climate.series(house, quantity);
            FilledSeries filled =
                    quantity == Quantity.MEDIUM_TEMPERATURE ? climate.curves().climateOf(house) : null;
            List<Hour> hours = new ArrayList<>();
            long end = Math.min(HourlySeries.hourOf(untilExclusive), HourlySeries.hourOf(asOf()));
            for (long hour = HourlySeries.hourOf(fromInclusive); hour < end; hour++) {
                if (series.isMeasured(hour)) {
                    hours.add(new Hour(HourlySeries.startOf(hour), series.meanC(hour), "measured"));
                } else if (filled != null && filled.sourceOf(hour) != HourSource.REFERENCE) {
                    hours.add(new Hour(HourlySeries.startOf(hour), filled.celsius(hour, Double.NaN), "filled"));
                }
            }
            return hours;
        });
    }
}
