package rootcast.app.climate;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import rootcast.app.climate.store.IngestTables;

/**
 * Topics that messages came under and that no sensor has: sensors yet to be set up. Of all nodes together; what this
 * node has seen since it last wrote is added every few seconds ({@link FlushIngest}).
 */
@ApplicationScoped
public class UnmappedTopics {

    /** Between two writes; the topic longest silent makes room. */
    private static final int MOST = 500;

    private static final int LONGEST = 200;

    @Inject
    IngestTables tables;

    private Map<String, Seen> since = new LinkedHashMap<>();

    /**
     * @param last what the newest message said, cut short if it is long
     * @param at   when it came
     */
    public record Seen(String topic, long count, String last, Instant at) {

        private Seen andOlder(Seen older) {
            return new Seen(topic, count + older.count, last, at);
        }
    }

    public synchronized void seen(String topic, String text, Instant at) {
        String last = text.length() > LONGEST ? text.substring(0, LONGEST) : text;
        add(new Seen(topic, 1, last, at));
    }

    private void add(Seen newer) {
        Seen before = since.remove(newer.topic());
        since.put(newer.topic(), before == null ? newer : newer.andOlder(before));
        if (since.size() > MOST) {
            since.remove(since.keySet().iterator().next());
        }
    }

    /** Sensors have these topics now. */
    public synchronized void mapped(Set<String> topics) {
        since.keySet().removeAll(topics);
    }

    /** The one seen last comes first. */
    public List<Seen> all() {
        Map<String, Seen> all = new HashMap<>();
        for (IngestTables.Topic each : tables.topics()) {
            all.put(each.topic(), new Seen(each.topic(), each.messages(), each.last(), each.lastSeenAt()));
        }
        synchronized (this) {
            since.forEach((topic, seen) -> all.merge(topic, seen, (older, newer) -> newer.andOlder(older)));
        }
        List<Seen> ordered = new ArrayList<>(all.values());
        ordered.sort(Comparator.comparing(Seen::at).reversed().thenComparing(Seen::topic));
        return ordered;
    }

    /** Adds what was seen since the last time to the table; if that fails, it is added the next time. */
    void flush() {
        Map<String, Seen> added;
        synchronized (this) {
            added = since;
            since = new LinkedHashMap<>();
        }
        if (added.isEmpty()) {
            return;
        }
        try {
            QuarkusTransaction.requiringNew().run(() -> {
                added.values()
                        .forEach(each ->
                                tables.add(new IngestTables.Topic(each.topic(), each.count(), each.last(), each.at())));
                tables.tidyTopics();
            });
        } catch (RuntimeException failed) {
            synchronized (this) {
                Map<String, Seen> newer = since;
                since = added;
                newer.values().forEach(this::add);
            }
            throw failed;
        }
    }
}
