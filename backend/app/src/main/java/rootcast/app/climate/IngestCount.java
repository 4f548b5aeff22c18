package rootcast.app.climate;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.store.IngestTables;
import rootcast.saying.Fault;
import rootcast.saying.Saying;

/**
 * What came in, by way in, and what became of it, with the last examples of each fault; of all nodes together. What this
 * node has counted since it last wrote is added every few seconds ({@link FlushIngest}).
 */
@ApplicationScoped
public class IngestCount {

    public static final String HTTP = "http";
    public static final String MQTT = "mqtt";
    public static final String CSV = "csv";

    private static final String RECEIVED = "received";
    private static final String STORED = "stored";
    private static final String DUPLICATES = "duplicates";
    private static final int LONGEST = 200;

    @Inject
    IngestTables tables;

    private SortedMap<String, Way> since = new TreeMap<>();

    /**
     * @param what topic and payload, or the place in the request
     * @param why  null of what was counted before reasons were kept as codes
     */
    public record Example(String what, @Nullable Saying why, Instant at) {}

    public record Fault(String kind, long count, List<Example> last) {}

    /** @param received readings, of which each was stored, a duplicate, set aside or refused under {@code faults} */
    public record Counted(String way, long received, long stored, long duplicates, List<Fault> faults) {}

    private static final class Way {
        private long received;
        private long stored;
        private long duplicates;
        private final SortedMap<String, Long> faults = new TreeMap<>();
        private final SortedMap<String, Deque<Example>> examples = new TreeMap<>();

        /** Takes in what was counted earlier. */
        void addOlder(Way older) {
            received += older.received;
            stored += older.stored;
            duplicates += older.duplicates;
            older.faults.forEach((kind, count) -> faults.merge(kind, count, Long::sum));
            older.examples.forEach((kind, last) -> last.forEach(each -> addOlder(kind, each)));
        }

        private void addOlder(String kind, Example example) {
            Deque<Example> last = examples.computeIfAbsent(kind, any -> new ArrayDeque<>());
            if (last.size() < IngestTables.EXAMPLES) {
                last.addLast(example);
            }
        }

        List<IngestTables.Count> counts(String name) {
            List<IngestTables.Count> counts = new ArrayList<>();
            counts.add(new IngestTables.Count(name, RECEIVED, received));
            counts.add(new IngestTables.Count(name, STORED, stored));
            counts.add(new IngestTables.Count(name, DUPLICATES, duplicates));
            faults.forEach((kind, count) -> counts.add(new IngestTables.Count(name, kind, count)));
            return counts;
        }
    }

    /**
     * Counts readings that were read, and what the use case made of them.
     *
     * @param what says which reading a number is
     */
    public synchronized void taken(
            String way, long received, RecordReadings.Recorded recorded, IntFunction<String> what, Instant now) {
        Way counted = way(since, way);
        counted.received += received;
        counted.stored += recorded.accepted();
        counted.duplicates += recorded.duplicates();
        recorded.refused()
                .forEach(each -> fault(
                        counted,
                        each.flag() == null ? "refused" : each.flag(),
                        what.apply(each.index()),
                        each.why(),
                        now));
    }

    /** Counts a message that was received and could not be read as a reading. */
    public synchronized void refused(String way, String kind, String what, Saying why, Instant now) {
        fault(way(since, way), kind, what, why, now);
    }

    public synchronized void received(String way, long messages) {
        way(since, way).received += messages;
    }

    /** Counts messages that the broker gave again although they are stored. */
    public synchronized void duplicates(String way, long messages) {
        way(since, way).duplicates += messages;
    }

    private static void fault(Way way, String kind, String what, Saying why, Instant now) {
        way.faults.merge(kind, 1L, Long::sum);
        Deque<Example> last = way.examples.computeIfAbsent(kind, any -> new ArrayDeque<>());
        last.addFirst(new Example(what.length() > LONGEST ? what.substring(0, LONGEST) + "…" : what, why, now));
        if (last.size() > IngestTables.EXAMPLES) {
            last.removeLast();
        }
    }

    public List<Counted> all() {
        SortedMap<String, Way> ways = new TreeMap<>();
        synchronized (this) {
            since.forEach((name, way) -> way(ways, name).addOlder(way));
        }
        stored().forEach((name, way) -> way(ways, name).addOlder(way));
        List<Counted> all = new ArrayList<>();
        ways.forEach((name, way) -> {
            List<Fault> faults = new ArrayList<>();
            way.faults.forEach((kind, count) -> faults.add(
                    new Fault(kind, count, List.copyOf(way.examples.getOrDefault(kind, new ArrayDeque<>())))));
            all.add(new Counted(name, way.received, way.stored, way.duplicates, faults));
        });
        return all;
    }

    private SortedMap<String, Way> stored() {
        SortedMap<String, Way> ways = new TreeMap<>();
        for (IngestTables.Count count : tables.counts()) {
            Way way = way(ways, count.way());
            switch (count.kind()) {
                case RECEIVED -> way.received = count.total();
                case STORED -> way.stored = count.total();
                case DUPLICATES -> way.duplicates = count.total();
                default -> way.faults.put(count.kind(), count.total());
            }
        }
        for (IngestTables.Example each : tables.examples()) {
            way(ways, each.way()).addOlder(each.kind(), new Example(each.what(), each.why(), each.at()));
        }
        return ways;
    }

    /** Adds what was counted since the last time to the tables; if that fails, it is added the next time. */
    void flush() {
        SortedMap<String, Way> added;
        synchronized (this) {
            added = since;
            since = new TreeMap<>();
        }
        try {
            if (!added.isEmpty()) {
                QuarkusTransaction.requiringNew().run(() -> added.forEach(this::write));
            }
        } catch (RuntimeException failed) {
            synchronized (this) {
                added.forEach((name, way) -> way(since, name).addOlder(way));
            }
            throw failed;
        }
    }

    private void write(String name, Way way) {
        way.counts(name).stream().filter(count -> count.total() > 0).forEach(tables::add);
        way.examples.forEach((kind, last) -> last.forEach(
                each -> tables.add(new IngestTables.Example(name, kind, each.what(), each.why(), each.at()))));
    }

    private static Way way(SortedMap<String, Way> ways, String name) {
        return ways.computeIfAbsent(name, any -> new Way());
    }
}
