package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.store.Flags;
import rootcast.app.climate.store.Readings;
import rootcast.climate.QualityFlag;
import rootcast.climate.Quantity;

/** The newest good reading of each quantity of a house. */
@ApplicationScoped
public class HouseNow {

    /** Among so many of the newest readings one is looked for that no rule has left out. */
    private static final int LOOKED_AT = 30;

    @Inject
    Readings readings;

    @Inject
    Flags flags;

    /**
     * @param valueC the value again if it is a temperature, else null
     * @param sensor null for a reading sent without one
     */
    public record Value(
            String quantity,
            double value,
            String unit,
            @Nullable Double valueC,
            Instant at,
            @Nullable String sensor) {}

    public List<Value> of(String house) {
        List<Value> values = new ArrayList<>();
        for (Quantity quantity : Quantity.values()) {
            List<HouseReading> newest = readings.newest(house, quantity, LOOKED_AT);
            if (!newest.isEmpty()) {
                values.add(value(good(newest)));
            }
        }
        return values;
    }

    private HouseReading good(List<HouseReading> newest) {
        HouseQuantity of = newest.get(0).of();
        Instant first = newest.get(newest.size() - 1).at().truncatedTo(ChronoUnit.HOURS);
        Instant end = newest.get(0).at().plusNanos(1_000);
        Set<QualityFlag.Key> overruled = flags.overruled(of, first, end);
        Set<String> leftOut = flags.byHour(of, first, end).values().stream()
                .flatMap(List::stream)
                .filter(flag -> flag.leftOut() && !overruled.contains(flag.key()))
                .map(flag -> flag.sensor() + '|' + flag.at())
                .collect(Collectors.toSet());
        return newest.stream()
                .filter(reading -> !leftOut.contains(reading.sensor() + '|' + reading.at()))
                .filter(reading ->
                        !leftOut.contains(reading.sensor() + '|' + reading.at().truncatedTo(ChronoUnit.HOURS)))
                .findFirst()
                .orElse(newest.get(0));
    }

    private static Value value(HouseReading reading) {
        Quantity quantity = reading.quantity();
        boolean temperature = quantity == Quantity.MEDIUM_TEMPERATURE || quantity == Quantity.AIR_TEMPERATURE;
        return new Value(
                quantity.wireName(),
                reading.value(),
                quantity.unit().ucum(),
                temperature ? reading.value() : null,
                reading.at(),
                reading.sensor().isEmpty() ? null : reading.sensor());
    }
}
