package rootcast.app.climate;

import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import java.util.Set;
import rootcast.climate.HourlySeries;
import rootcast.climate.QualityFlag;
import rootcast.climate.ReadingQuality;
import rootcast.climate.SensorReadings;

/** Some hours of a house and quantity with every reading, as stored and as a person's overrides leaves them. */
final class HouseWindow {

    final HouseQuantity of;
    private final Map<String, SensorReadings> stored = new HashMap<>();
    private final Map<String, SensorReadings> broughtIn = new HashMap<>();
    private final Map<Long, KnownHour> hours = new HashMap<>();
    private final Set<QualityFlag.Key> overridden = new HashSet<>();
    private long fromHour;
    final long untilHour;

    /** An hour as it is stored. */
    record KnownHour(boolean isStored, boolean settled, ReadingQuality.Hour hour) {}

    private static final KnownHour NEW = new KnownHour(false, false, new ReadingQuality.Hour(0, 0, 0, List.of()));

    HouseWindow(HouseQuantity of, long fromHourInclusive, long untilHourExclusive) {
        this.of = of;
        this.fromHour = fromHourInclusive;
        this.untilHour = untilHourExclusive;
    }

    boolean covers(long fromHourInclusive, long untilHourExclusive) {
        return fromHourInclusive >= fromHour && untilHourExclusive <= untilHour;
    }

    /** A reading that was set aside and that a person wants in, whatever else is there at that moment. */
    void bringIn(String sensor, Instant at, double value) {
        readings(broughtIn, sensor).put(at, value);
    }

    void override(QualityFlag.Key flag) {
        overridden.add(flag);
    }

    void restore(long hour, KnownHour known) {
        hours.put(hour, known);
    }

    OptionalDouble stored(String sensor, Instant at) {
        SensorReadings readings = stored.get(sensor);
        return readings == null ? OptionalDouble.empty() : readings.at(at);
    }

    boolean isSettled(Instant at) {
        return hours.getOrDefault(HourlySeries.hourOf(at), NEW).settled();
    }

    /** A reading that is stored, or is about to be. */
    void add(String sensor, Instant at, double value) {
        readings(stored, sensor).put(at, value);
    }

    KnownHour known(long hour) {
        return hours.getOrDefault(hour, NEW);
    }

    ReadingQuality.Hour judged(long hour) {
        return new ReadingQuality(of.quantity(), used()).judge(hour, overridden);
    }

    private Map<String, SensorReadings> used() {
        if (broughtIn.isEmpty()) {
            return stored;
        }
        Map<String, SensorReadings> used = new HashMap<>(stored);
        broughtIn.forEach((sensor, instead) -> used.merge(sensor, instead, SensorReadings::with));
        return used;
    }

    void forgetBefore(long hour) {
        if (hour > fromHour) {
            fromHour = hour;
            stored.values().forEach(each -> each.forgetBefore(hour));
            broughtIn.values().forEach(each -> each.forgetBefore(hour));
            hours.keySet().removeIf(each -> each < hour);
            overridden.removeIf(each -> HourlySeries.hourOf(each.at()) < hour);
        }
    }

    private static SensorReadings readings(Map<String, SensorReadings> of, String sensor) {
        return of.computeIfAbsent(sensor, any -> new SensorReadings());
    }
}
