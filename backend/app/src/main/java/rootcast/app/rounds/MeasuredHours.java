package rootcast.app.rounds;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.EnumMap;
import java.util.Map;
import rootcast.app.climate.ClimateSnapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.climate.HourlySeries;
import rootcast.climate.Quantity;
import rootcast.warnings.HouseHours;
import rootcast.warnings.Measured;

/** A house's measured hours as of now. */
@ApplicationScoped
public class MeasuredHours {

    @Inject
    Snapshots snapshots;

    public HouseHours of(String house, long fromInclusive, long untilExclusive) {
        ClimateSnapshot climate = snapshots.now().part(ClimateSnapshot.class);
        Map<Measured, HourlySeries> series = new EnumMap<>(Measured.class);
        for (Measured measured : Measured.values()) {
            Quantity.ofWireName(measured.wireName())
                    .ifPresent(quantity -> series.put(measured, climate.series(house, quantity)));
        }
        return (measured, hour) -> hour < fromInclusive || hour >= untilExclusive || !series.containsKey(measured)
                ? Double.NaN
                : series.get(measured).meanC(hour);
    }
}
