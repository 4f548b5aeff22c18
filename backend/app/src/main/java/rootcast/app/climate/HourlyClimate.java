package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import rootcast.app.snapshot.Snapshots;
import rootcast.climate.DailyLight;
import rootcast.climate.FilledSeries;
import rootcast.climate.HourSource;
import rootcast.climate.HourlySeries;
import rootcast.climate.MoistAir;
import rootcast.climate.Quantity;

/** A house's hours as they were measured, are taken to have been, or follow from what was measured. */
@ApplicationScoped
public class HourlyClimate {

    private static final String MEASURED = "measured";
    private static final String FILLED = "filled";

    @Inject
    Snapshots snapshots;

    /** @param source measured or filled */
    public record Hour(Instant at, double value, String source) {}

    public Instant asOf() {
        return now().asOf();
    }

    private ClimateSnapshot now() {
        return snapshots.now().part(ClimateSnapshot.class);
    }

    /** Hours that have ended; only medium temperature is bridged where readings are missing, since dates rest on it. */
    public List<Hour> hours(String house, Quantity quantity, Instant fromInclusive, Instant untilExclusive) {
        ClimateSnapshot climate = now();
        HourlySeries series = climate.series(house, quantity);
        FilledSeries filled = quantity == Quantity.MEDIUM_TEMPERATURE
                ? climate.curves(List.of(house)).climateOf(house)
                : null;
        List<Hour> hours = new ArrayList<>();
        long end = endOf(climate, untilExclusive);
        for (long hour = HourlySeries.hourOf(fromInclusive); hour < end; hour++) {
            if (series.isMeasured(hour)) {
                hours.add(new Hour(HourlySeries.startOf(hour), series.meanC(hour), MEASURED));
            } else if (filled != null && filled.sourceOf(hour) != HourSource.REFERENCE) {
                hours.add(new Hour(HourlySeries.startOf(hour), filled.celsius(hour, Double.NaN), FILLED));
            }
        }
        return hours;
    }

    /** What follows from the hour's mean air temperature and humidity. */
    private interface OfMoistAir {
        double value(double airC, double humidityPercent);
    }

    /** Vapour-pressure deficit, kPa; hours in which both air temperature and humidity were measured. */
    public List<Hour> deficits(String house, Instant fromInclusive, Instant untilExclusive) {
        return moist(house, fromInclusive, untilExclusive, MoistAir::deficitKpa);
    }

    /** Dew point, °C; hours in which both air temperature and humidity were measured. */
    public List<Hour> dewPoints(String house, Instant fromInclusive, Instant untilExclusive) {
        return moist(house, fromInclusive, untilExclusive, MoistAir::dewPointC);
    }

    private List<Hour> moist(String house, Instant fromInclusive, Instant untilExclusive, OfMoistAir formula) {
        ClimateSnapshot climate = now();
        HourlySeries air = climate.series(house, Quantity.AIR_TEMPERATURE);
        HourlySeries humidity = climate.series(house, Quantity.RELATIVE_HUMIDITY);
        List<Hour> hours = new ArrayList<>();
        long end = endOf(climate, untilExclusive);
        for (long hour = HourlySeries.hourOf(fromInclusive); hour < end; hour++) {
            // air without any water has no dew point
            if (air.isMeasured(hour) && humidity.isMeasured(hour) && humidity.meanC(hour) > 0) {
                hours.add(new Hour(
                        HourlySeries.startOf(hour), formula.value(air.meanC(hour), humidity.meanC(hour)), MEASURED));
            }
        }
        return hours;
    }

    /** Daily light integrals, mol/m²/d, of the site's days that have ended and touch the time asked for. */
    public List<Hour> lightOfDays(String house, ZoneId zone, Instant fromInclusive, Instant untilExclusive) {
        ClimateSnapshot climate = now();
        HourlySeries light = climate.series(house, Quantity.LIGHT);
        List<Hour> days = new ArrayList<>();
        LocalDate day = LocalDate.ofInstant(fromInclusive, zone);
        Instant end = untilExclusive.isBefore(climate.asOf()) ? untilExclusive : climate.asOf();
        for (; day.atStartOfDay(zone).toInstant().isBefore(end); day = day.plusDays(1)) {
            Instant midnight = day.atStartOfDay(zone).toInstant();
            Instant next = day.plusDays(1).atStartOfDay(zone).toInstant();
            if (next.isAfter(climate.asOf())) {
                break;
            }
            DailyLight.Day sum = DailyLight.of(light, HourlySeries.hourOf(midnight), HourlySeries.hourOf(next));
            if (!Double.isNaN(sum.moles())) {
                days.add(new Hour(midnight, sum.moles(), sum.bridgedHours() == 0 ? MEASURED : FILLED));
            }
        }
        return days;
    }

    private static long endOf(ClimateSnapshot climate, Instant untilExclusive) {
        return Math.min(HourlySeries.hourOf(untilExclusive), HourlySeries.hourOf(climate.asOf()));
    }
}
