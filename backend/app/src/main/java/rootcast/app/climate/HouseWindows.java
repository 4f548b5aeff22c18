package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Status;
import jakarta.transaction.Synchronization;
import jakarta.transaction.TransactionSynchronizationRegistry;
import java.time.Instant;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedSet;
import rootcast.app.climate.store.Flags;
import rootcast.app.climate.store.Readings;
import rootcast.app.once.FactHead;
import rootcast.climate.HourlySeries;
import rootcast.climate.ReadingQuality;
import rootcast.facts.FactPosition;

/**
 * The last hours of every house with all their readings, so that a reading's repeat and neighbours are at hand without
 * asking the database; used by the one writer that holds the head, and by nobody else.
 */
@ApplicationScoped
class HouseWindows {

    private static final int MOST = 3_000;

    /** Readings that come so late still find their hours in memory. */
    private static final int SLACK_HOURS = 6;

    @Inject
    Readings readings;

    @Inject
    Flags flags;

    @Inject
    FactHead head;

    @Inject
    TransactionSynchronizationRegistry transaction;

    private final Map<HouseQuantity, HouseWindow> windows = new LinkedHashMap<>(64, 0.75f, true) {
        private static final long serialVersionUID = 1L;

        @Override
        protected boolean removeEldestEntry(Map.Entry<HouseQuantity, HouseWindow> eldest) {
            return size() > MOST;
        }
    };
    private FactPosition known = FactPosition.START;

    /** Before anything else of a write: forgets what another process has written to, and all if this write fails. */
    void catchUp() {
        FactPosition last = head.last().position();
        if (!windows.isEmpty() && last.compareTo(known) > 0) {
            readings.seriesWrittenBetween(known, last).forEach(windows::remove);
        }
        known = last;
        transaction.registerInterposedSynchronization(new Synchronization() {
            @Override
            public void beforeCompletion() {
                // nothing of it is written later than now
            }

            @Override
            public void afterCompletion(int status) {
                if (status != Status.STATUS_COMMITTED) {
                    windows.clear();
                }
            }
        });
    }

    /** A window that holds all that readings at these moments can touch. */
    HouseWindow around(HouseQuantity of, Collection<Instant> moments, Instant now) {
        SortedSet<Long> reached = ReadingQuality.reachedFrom(moments);
        long from = ReadingQuality.neededFrom(reached.first());
        long until = reached.last() + 2;
        HouseWindow window = windows.get(of);
        if (window != null && window.covers(from, until)) {
            return window;
        }
        windows.remove(of);
        long thisHour = HourlySeries.hourOf(now);
        boolean recent = reached.last() >= thisHour;
        long oldest = Math.min(from, thisHour - kept());
        window = recent ? loaded(of, oldest, Long.MAX_VALUE) : loaded(of, from, until);
        if (recent) {
            windows.put(of, window);
        }
        return window;
    }

    void forget(HouseQuantity of) {
        windows.remove(of);
    }

    void forgetAll() {
        windows.clear();
    }

    private HouseWindow loaded(HouseQuantity of, long from, long until) {
        HouseWindow window = new HouseWindow(of, from, until);
        Instant since = HourlySeries.startOf(from);
        Instant end = until == Long.MAX_VALUE ? Readings.NEVER : HourlySeries.startOf(until);
        readings.eachOf(of, since, end, window::add);
        var flagsByHour = flags.byHour(of, since, end);
        readings.eachHourOf(
                of,
                since,
                end,
                hour -> window.restore(
                        HourlySeries.hourOf(hour.hourStart()),
                        new HouseWindow.KnownHour(
                                true,
                                hour.settled(),
                                new ReadingQuality.Hour(
                                        hour.totalMicro(),
                                        hour.readings(),
                                        hour.leftOut(),
                                        flagsByHour.getOrDefault(HourlySeries.hourOf(hour.hourStart()), List.of())))));
        flags.overridden(of, since, end).forEach(window::override);
        flags.broughtIn(of, since, end)
                .forEach(reading -> window.bringIn(reading.sensor(), reading.at(), reading.value()));
        return window;
    }

    /** Judges anew what readings at these moments reach; what is different goes to {@code judged}, still to be stored. */
    void judge(HouseWindow window, Collection<Instant> moments, JudgedHours judged) {
        for (long hour : ReadingQuality.reachedFrom(moments)) {
            HouseWindow.KnownHour before = window.known(hour);
            ReadingQuality.Hour now = window.judged(hour);
            if (before.settled() || before.hour().equals(now)) {
                continue;
            }
            judged.put(window.of, HourlySeries.startOf(hour), before, now);
            window.restore(hour, new HouseWindow.KnownHour(true, false, now));
        }
        window.forgetBefore(newest(window, moments) - kept());
    }

    /** Stores what was judged in this write, of all houses at once. */
    void store(JudgedHours judged, FactPosition position) {
        judged.store(readings, flags, position);
        known = position;
    }

    private static long newest(HouseWindow window, Collection<Instant> moments) {
        return window.untilHour == Long.MAX_VALUE
                ? HourlySeries.hourOf(java.util.Collections.max(moments))
                : Long.MIN_VALUE / 2;
    }

    private static long kept() {
        return ReadingQuality.FLAT_HOURS + SLACK_HOURS + 2;
    }
}
