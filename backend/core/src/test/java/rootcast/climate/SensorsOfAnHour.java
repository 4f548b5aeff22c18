package rootcast.climate;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Readings of the sensors of one house around ten o'clock, and what is made of that hour. */
abstract class SensorsOfAnHour {

    static final Instant TEN = Instant.parse("2026-03-01T10:00:00Z");
    static final long HOUR = HourlySeries.hourOf(TEN);

    final Map<String, SensorReadings> sensors = new HashMap<>();

    /** @param minutes after ten */
    void put(String sensor, double minutes, double value) {
        sensors.computeIfAbsent(sensor, any -> new SensorReadings())
                .put(TEN.plus(Duration.ofSeconds(Math.round(minutes * 60))), value);
    }

    ReadingQuality.Hour judge(Quantity quantity, QualityFlag.Key... overridden) {
        return new ReadingQuality(quantity, sensors).judge(HOUR, Set.of(overridden));
    }

    List<QualityFlag> flags() {
        return judge(Quantity.MEDIUM_TEMPERATURE).flags();
    }
}
