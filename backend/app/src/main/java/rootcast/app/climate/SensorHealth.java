package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.store.Flags;
import rootcast.app.climate.store.Readings;
import rootcast.app.climate.store.Sensors;
import rootcast.climate.Sensor;

/** Whether a sensor still reports, and what was odd about it in the last day. */
@ApplicationScoped
public class SensorHealth {

    private static final Duration LOOKED_AT = Duration.ofDays(1);
    private static final Duration AHEAD = Duration.ofDays(3);
    private static final int MOST = 5_000;

    @Inject
    Sensors sensors;

    @Inject
    Readings readings;

    @Inject
    Flags flags;

    @Inject
    InstantSource time;

    /**
     * @param lastAt        of the newest reading that is in the series; null if there is none that is kept raw
     * @param silentMinutes since then
     * @param readings      in the last 24 hours
     * @param flags         by kind, of the last 24 hours
     */
    public record Health(
            String sensor,
            String quantity,
            String unit,
            @Nullable Instant lastAt,
            @Nullable Double lastValue,
            @Nullable Long silentMinutes,
            long readings,
            Map<String, Integer> flags) {}

    public List<Health> of(String house) {
        Instant now = time.instant();
        return sensors.all().stream()
                .filter(sensor -> sensor.house().equals(house))
                .map(sensor -> health(sensor, now))
                .toList();
    }

    private Health health(Sensor sensor, Instant now) {
        HouseQuantity of = new HouseQuantity(sensor.house(), sensor.quantity());
        HouseReading last = readings.newestOf(of, sensor.code()).orElse(null);
        Map<String, Integer> kinds = new TreeMap<>();
        // clocks that run ahead are flagged at the time they say
        for (Flags.Shown shown : flags.shown(of, now.minus(LOOKED_AT), now.plus(AHEAD), MOST)) {
            if (shown.flag().sensor().equals(sensor.code())) {
                kinds.merge(shown.flag().kind().wireName(), 1, Integer::sum);
            }
        }
        return new Health(
                sensor.code(),
                sensor.quantity().wireName(),
                sensor.quantity().unit().ucum(),
                last == null ? null : last.at(),
                last == null ? null : last.value(),
                last == null ? null : Duration.between(last.at(), now).toMinutes(),
                readings.numberOf(of, sensor.code(), now.minus(LOOKED_AT)),
                kinds);
    }
}
