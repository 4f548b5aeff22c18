package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.IntFunction;

/** What came in since the start of this process, by way in, and what became of it, with the last examples of each fault. */
@ApplicationScoped
public class IngestCount {

    public static final String HTTP = "http";
    public static final String MQTT = "mqtt";
    public static final String CSV = "csv";

    private static final int EXAMPLES = 5;
    private static final int LONGEST = 200;

    private final SortedMap<String, Way> ways = new TreeMap<>();

    /** @param what topic and payload, or the place in the request */
    public record Example(String what, String reason, Instant at) {}

    public record Fault(String kind, long count, List<Example> last) {}

    /** @param received readings, of which each was stored, a duplicate, set aside or refused under {@code faults} */
    public record Counted(String way, long received, long stored, long duplicates, List<Fault> faults) {}

    private static final class Way {
        private long received;
        private long stored;
        private long duplicates;
        private final SortedMap<String, Long> faults = new TreeMap<>();
        private final SortedMap<String, Deque<Example>> examples = new TreeMap<>();
    }

    /**
     * Counts readings that were read, and what the use case made of them.
     *
     * @param what says which reading a number is
     */
    public synchronized void taken(
            String way, long received, RecordReadings.Recorded recorded, IntFunction<String> what, Instant now) {
        Way counted = way(way);
        counted.received += received;
        counted.stored += recorded.accepted();
        counted.duplicates += recorded.duplicates();
        recorded.refused()
                .forEach(each -> fault(
                        counted,
                        each.flag() == null ? "refused" : each.flag(),
                        what.apply(each.index()),
                        each.reason(),
                        now));
    }

    /** Counts a message that was received and could not be read as a reading. */
    public synchronized void refused(String way, String kind, String what, String reason, Instant now) {
        fault(way(way), kind, what, reason, now);
    }

    public synchronized void received(String way, long messages) {
        way(way).received += messages;
    }

    private static void fault(Way way, String kind, String what, String reason, Instant now) {
        way.faults.merge(kind, 1L, Long::sum);
        Deque<Example> last = way.examples.computeIfAbsent(kind, any -> new ArrayDeque<>());
        last.addFirst(new Example(what.length() > LONGEST ? what.substring(0, LONGEST) + "…" : what, reason, now));
        if (last.size() > EXAMPLES) {
            last.removeLast();
        }
    }

    public synchronized List<Counted> all() {
        List<Counted> all = new ArrayList<>();
        ways.forEach((name, way) -> {
            List<Fault> faults = new ArrayList<>();
            way.faults.forEach(
                    (kind, count) -> faults.add(new Fault(kind, count, List.copyOf(way.examples.get(kind)))));
            all.add(new Counted(name, way.received, way.stored, way.duplicates, faults));
        });
        return all;
    }

    private Way way(String name) {
        return ways.computeIfAbsent(name, any -> new Way());
    }
}
