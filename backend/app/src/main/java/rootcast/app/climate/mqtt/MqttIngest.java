package rootcast.app.climate.mqtt;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import io.vertx.core.Vertx;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.TimeUnit;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.store.BusinessCode;
import rootcast.app.node.NodeDuties;

/**
 * Takes readings from an MQTT broker at QoS 1, in a session of the business that the broker keeps while nobody listens.
 *
 * <p>Of several nodes one has the duty to listen, as a lease that it renews; the others stand by and take over within
 * seconds. Decision: docs/decisions/0012-one-listener.md.
 */
@ApplicationScoped
public class MqttIngest {

    private static final Logger LOG = Logger.getLogger(MqttIngest.class);

    private static final Duration LEASE = Duration.ofSeconds(6);
    private static final Duration RENEWED_EVERY = Duration.ofSeconds(1);
    private static final Duration PATIENCE = Duration.ofSeconds(5);

    @Inject
    MqttConfig config;

    @Inject
    Arrivals arrivals;

    @Inject
    NodeDuties duties;

    @Inject
    BusinessCode business;

    @Inject
    Vertx vertx;

    @Inject
    InstantSource time;

    private @Nullable Broker broker;
    private @Nullable Link link;
    private @Nullable ScheduledExecutorService clock;
    private volatile @Nullable Instant heldSince;

    /** Where the broker is and what the business is called there. */
    record Broker(String host, int port, String clientId, String topics) {}

    /**
     * How it stands with the broker.
     *
     * @param state off, standby (another node listens), connecting or connected
     */
    public record State(
            String state,
            @Nullable String broker,
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
                        config.clientId().orElseGet(() -> "rootcast-" + business.code()),
                        config.topics())));
    }

    void stop(@Observes ShutdownEvent event) {
        disconnect();
    }

    synchronized void connect(Broker to) {
        broker = to;
        LOG.infof("readings by MQTT from %s:%d, topics %s, as %s", to.host(), to.port(), to.topics(), to.clientId());
        ScheduledExecutorService next = Executors.newSingleThreadScheduledExecutor(work -> {
            Thread thread = new Thread(work, "duty to listen");
            thread.setDaemon(true);
            return thread;
        });
        next.scheduleWithFixedDelay(() -> renew(to), 0, RENEWED_EVERY.toMillis(), TimeUnit.MILLISECONDS);
        clock = next;
    }

    private void renew(Broker to) {
        boolean mine;
        Instant asked = time.instant();
        try {
            mine = duties.take(NodeDuties.LISTEN_MQTT, LEASE);
        } catch (RuntimeException away) {
            // What is connected stays so: nothing can be stored, so nothing is acknowledged, and the broker keeps it.
            LOG.debugf("the duty to listen could not be renewed: %s", away);
            return;
        }
        try {
            follow(to, mine ? asked : null);
        } catch (RuntimeException failed) {
            LOG.warnf(failed, "could not start to listen, trying again");
        }
    }

    private synchronized void follow(Broker to, @Nullable Instant held) {
        if (!to.equals(broker)) {
            return;
        }
        boolean mine = held != null;
        heldSince = held;
        if (link != null && !(mine && arrivals.isRunning())) {
            LOG.infof(mine ? "readings by MQTT are taken up again" : "another node takes readings by MQTT now");
            close(Duration.ZERO);
        }
        if (mine && link == null) {
            arrivals.start();
            link = new Link(this, to);
            link.open();
        }
    }

    private void close(Duration patience) {
        arrivals.stop(patience); // first, so that what was stored is acknowledged on the connection it came by
        Link last = link;
        link = null;
        if (last != null) {
            last.close();
        }
    }

    void disconnect() {
        ScheduledExecutorService last;
        synchronized (this) {
            broker = null;
            last = clock;
            clock = null;
            close(PATIENCE);
            heldSince = null;
        }
        if (last == null) {
            return;
        }
        last.shutdown();
        try {
            if (last.awaitTermination(PATIENCE.toMillis(), TimeUnit.MILLISECONDS)) {
                duties.leave(NodeDuties.LISTEN_MQTT);
            }
        } catch (InterruptedException ended) {
            Thread.currentThread().interrupt();
        } catch (RuntimeException away) {
            LOG.debugf("the duty to listen runs out by itself: %s", away);
        }
    }

    /** Whether no other node can have taken the duty since it was last renewed. */
    boolean mayConnect() {
        Instant since = heldSince;
        return since != null && time.instant().isBefore(since.plus(LEASE));
    }

    /** Sends a reading as a sensor would; says whether there was a connection to send it on. */
    public synchronized boolean send(String topic, double value, Instant at) {
        return link != null
                && link.isOpen()
                && link.send(topic, "{\"value\": %s, \"at\": \"%s\"}".formatted(value, at));
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
        Link now = link;
        if (to == null) {
            return new State("off", null, 0, null, 0, null);
        }
        String at = to.host() + ":" + to.port();
        if (now == null) {
            return new State("standby", at, 0, null, 0, null);
        }
        return new State(
                now.isOpen() ? "connected" : "connecting",
                at,
                arrivals.waiting(),
                now.connectedAt(),
                now.reconnects(),
                now.lastError());
    }
}
