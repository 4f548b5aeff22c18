package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/** Topics that messages came under since the start of this process and that no sensor has: sensors yet to be set up. */
@ApplicationScoped
public class UnmappedTopics {

    /** The topic longest silent makes room; a broker that carries other trades' messages would fill the memory. */
    static final int MOST = 500;

    private static final int LONGEST = 200;

    private final Map<String, Heard> byTopic = new LinkedHashMap<>();

    /** @param last what the newest message said, cut short if it is long */
    public record Heard(String topic, long count, String last, Instant at) {}

    public synchronized void heard(String topic, String text, Instant at) {
        Heard before = byTopic.remove(topic);
        long count = before == null ? 1 : before.count() + 1;
        byTopic.put(topic, new Heard(topic, count, text.length() > LONGEST ? text.substring(0, LONGEST) : text, at));
        if (byTopic.size() > MOST) {
            byTopic.remove(byTopic.keySet().iterator().next());
        }
    }

    /** Sensors have these topics now. */
    public synchronized void known(Set<String> topics) {
        byTopic.keySet().removeAll(topics);
    }

    /** The one heard last comes first. */
    public synchronized List<Heard> all() {
        List<Heard> all = new ArrayList<>(byTopic.values());
        Collections.reverse(all);
        return all;
    }
}
