package rootcast.app.climate;

import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rootcast.app.climate.store.Flags;
import rootcast.app.climate.store.Readings;
import rootcast.climate.QualityFlag;
import rootcast.climate.ReadingQuality;
import rootcast.facts.FactPosition;

/**
 * What one write changes in the hours of all the houses it touches, so that it is stored in a few statements: while it is
 * being stored every other writer waits, and two hundred houses report at once.
 */
final class JudgedHours {

    private final Map<Key, Readings.Hour> hours = new LinkedHashMap<>();
    private final Set<FlagOfHouse> raised = new LinkedHashSet<>();
    private final Set<FlagOfHouse> dropped = new LinkedHashSet<>();

    private record Key(HouseQuantity of, Instant hourStart) {}

    /** An hour was judged another than it is stored, or than it was judged earlier in the same write. */
    void put(HouseQuantity of, Instant hourStart, HouseWindow.KnownHour before, ReadingQuality.Hour now) {
        for (QualityFlag flag : before.hour().flags()) {
            if (!now.flags().contains(flag)) {
                drop(new FlagOfHouse(of, flag));
            }
        }
        for (QualityFlag flag : now.flags()) {
            if (!before.hour().flags().contains(flag)) {
                raise(new FlagOfHouse(of, flag));
            }
        }
        Readings.Hour earlier = hours.get(new Key(of, hourStart));
        hours.put(
                new Key(of, hourStart),
                new Readings.Hour(
                        of.house(),
                        of.quantity(),
                        hourStart,
                        now.totalMicro(),
                        now.readings(),
                        now.leftOut(),
                        false,
                        earlier == null ? before.isStored() : earlier.isStored()));
    }

    private void drop(FlagOfHouse flag) {
        if (!raised.remove(flag)) {
            dropped.add(flag);
        }
    }

    private void raise(FlagOfHouse flag) {
        if (!dropped.remove(flag)) {
            raised.add(flag);
        }
    }

    /** Flags that are new with this write. */
    List<FlagOfHouse> raised() {
        return List.copyOf(raised);
    }

    /** Flags that are stored and no longer hold. */
    List<FlagOfHouse> dropped() {
        return List.copyOf(dropped);
    }

    /** Each hour once, as it was judged last. */
    List<Readings.Hour> hours() {
        return List.copyOf(hours.values());
    }

    void store(Readings readings, Flags flags, FactPosition position) {
        readings.putHours(hours(), position);
        flags.replace(dropped(), raised());
    }
}
