package rootcast.app.rounds;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.Map;
import rootcast.app.climate.LiveClimate;
import rootcast.app.climate.LiveLock;
import rootcast.climate.HourlySeries;
import rootcast.climate.Quantity;
import rootcast.warnings.HouseHours;
import rootcast.warnings.Measured;

/** A copy of a house's measured hours, so that nobody holds up the readings while reckoning with them. */
@ApplicationScoped
public class MeasuredHours {

    @Inject
    LiveClimate climate;

    @Inject
    LiveLock live;

    public HouseHours of(String house, long fromInclusive, long untilExclusive) {
        Map<Measured, double[]> copied = live.holding(() -> copy(house, fromInclusive, untilExclusive));
        return (measured, hour) -> hour < fromInclusive || hour >= untilExclusive
                ? Double.NaN
                : copied.get(measured)[(int) (hour - fromInclusive)];
    }

    private Map<Measured, double[]> copy(String house, long fromInclusive, long untilExclusive) {
        Map<Measured, double[]> copied = new EnumMap<>(Measured.class);
        for (Measured measured : Measured.values()) {
            double[] hours = new double[(int) (untilExclusive - fromInclusive)];
            Arrays.fill(hours, Double.NaN);
            Quantity.ofWireName(measured.wireName()).ifPresent(quantity -> {
                HourlySeries series = climate.series(house, quantity);
                for (int hour = 0; hour < hours.length; hour++) {
                    hours[hour] = series.meanC(fromInclusive + hour);
                }
            });
            copied.put(measured, hours);
        }
        return copied;
    }
}
