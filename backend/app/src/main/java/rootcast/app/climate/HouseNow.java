package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
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

    /** Flags of so long before the newest reading of all are read together; a house silent for longer is asked by itself. */
    private static final Duration FLAGS_LOOKED_AT = Duration.ofDays(2);

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

    /** The same of many houses, in three questions to the database instead of a dozen per house. */
    public Map<String, List<Value>> of(Collection<String> houses) {
        Map<HouseQuantity, HouseReading> newest = new HashMap<>();
        readings.newestOfEach(houses).forEach(reading -> newest.putIfAbsent(reading.of(), reading));
        Instant since = newest.values().stream()
                .map(HouseReading::at)
                .max(Comparator.naturalOrder())
                .orElse(Instant.EPOCH)
                .minus(FLAGS_LOOKED_AT);
        Map<HouseQuantity, Instant> leftOut = flags.lastLeftOut(houses, since);
        Map<String, List<Value>> values = new HashMap<>();
        for (String house : houses) {
            List<Value> ofHouse = new ArrayList<>();
            for (Quantity quantity : Quantity.values()) {
                HouseQuantity of = new HouseQuantity(house, quantity);
                HouseReading reading = newest.get(of);
                if (reading != null) {
                    Instant hour = reading.at().truncatedTo(ChronoUnit.HOURS);
                    boolean clear = !hour.isBefore(since)
                            && leftOut.getOrDefault(of, Instant.MIN).isBefore(hour);
                    ofHouse.add(value(clear ? reading : good(readings.newest(house, quantity, LOOKED_AT))));
                }
            }
            values.put(house, ofHouse);
        }
        return values;
    }

    private HouseReading good(List<HouseReading> newest) {
        HouseQuantity of = newest.get(0).of();
        Instant first = newest.get(newest.size() - 1).at().truncatedTo(ChronoUnit.HOURS);
        Instant end = newest.get(0).at().plusNanos(1_000);
        Set<QualityFlag.Key> overridden = flags.overridden(of, first, end);
        Set<String> leftOut = flags.byHour(of, first, end).values().stream()
                .flatMap(List::stream)
                .filter(flag -> flag.leftOut() && !overridden.contains(flag.key()))
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
