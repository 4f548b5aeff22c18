package rootcast.app.climate.mqtt;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import io.vertx.core.Vertx;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Takes readings from an MQTT broker at QoS 1, in a session that the broker keeps while this node is away.
 *
 * <p>If messages are to be shared among nodes, it is tried out first whether the broker can: one that does not would take
 * {@code $share/…} for a name and deliver nothing. Decision: docs/decisions/0009-ingest-and-acknowledgement.md.
 */
@ApplicationScoped
public class MqttIngest {

    private static final Logger LOG = Logger.getLogger(MqttIngest.class);

    @Inject
    MqttConfig config;

    @Inject
    Arrivals arrivals;

    @Inject
    Vertx vertx;

    @Inject
    InstantSource time;

    @ConfigProperty(name = "quarkus.http.port", defaultValue = "8080")
    int httpPort;

    private final List<Link> links = new ArrayList<>();
    private String sharing = "unknown";
    private @Nullable Broker broker;

    /** Where the broker is and what this node is called there. */
    record Broker(String host, int port, String clientId, String topics, boolean share, String group, int connections) {

        String shared() {
            return "$share/" + group + "/" + topics;
        }
    }

    /** How it stands with the broker. */
    public record State(
            String state,
            @Nullable String broker,
            String sharing,
            int connections,
            int waiting,
            @Nullable Instant lastConnectedAt,
            int reconnects,
            @Nullable String lastError) {}

    /** After what is live was made. */
    void start(@Observes @Priority(200) StartupEvent event) {
        config.host()
                .ifPresent(host -> connect(new Broker(
                        host,
                        config.port(),
                        config.clientId() + "-" + httpPort,
                        config.topics(),
                        config.shared(),
                        config.group(),
                        config.connections())));
    }

    void stop(@Observes ShutdownEvent event) {
        disconnect();
    }

    synchronized void connect(Broker to) {
        broker = to;
        arrivals.start();
        LOG.infof("readings by MQTT from %s:%d, topics %s", to.host(), to.port(), to.topics());
        Link first = new Link(this, to, 0);
        links.add(first);
        if (to.share()) {
            first.tryOutSharing();
        } else {
            sharingIs(false);
        }
    }

    /** Told by the first link. */
    synchronized void sharingIs(boolean shared) {
        Broker to = broker;
        if (to == null || links.isEmpty()) {
            return;
        }
        sharing = shared ? "shared" : "alone";
        if (to.share() && !shared) {
            LOG.warn("the broker does not share subscriptions: run one node, on one connection");
        }
        for (int number = links.size(); shared && number < to.connections(); number++) {
            links.add(new Link(this, to, number));
        }
        links.forEach(link -> link.open(shared));
    }

    synchronized void disconnect() {
        links.forEach(Link::close);
        links.clear();
        arrivals.stop();
        broker = null;
        sharing = "unknown";
    }

    /** Sends a reading as a sensor would; says whether there was a connection to send it on. */
    public synchronized boolean send(String topic, double value, Instant at) {
        return links.stream()
                .filter(Link::isOpen)
                .findFirst()
                .map(link -> link.send(topic, "{\"value\": %s, \"at\": \"%s\"}".formatted(value, at)))
                .orElse(false);
    }

    Vertx vertx() {
        return vertx;
    }

    MqttConfig config() {
        return config;
    }

    Instant now() {
        return time.instant();
    }

    Arrivals arrivals() {
        return arrivals;
    }

    public synchronized State state() {
        Broker to = broker;
        long open = links.stream().filter(Link::isOpen).count();
        return new State(
                to == null ? "off" : open > 0 ? "connected" : "connecting",
                to == null ? null : to.host() + ":" + to.port(),
                sharing,
                Math.toIntExact(open),
                arrivals.waiting(),
                links.stream()
                        .map(Link::connectedAt)
                        .filter(java.util.Objects::nonNull)
                        .max(java.util.Comparator.naturalOrder())
                        .orElse(null),
                links.stream().mapToInt(Link::reconnects).sum(),
                links.stream()
                        .map(Link::lastError)
                        .filter(java.util.Objects::nonNull)
                        .findFirst()
                        .orElse(null));
    }
}
