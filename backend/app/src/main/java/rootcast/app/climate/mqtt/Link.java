package rootcast.app.climate.mqtt;

import io.netty.handler.codec.mqtt.MqttQoS;
import io.vertx.core.buffer.Buffer;
import io.vertx.mqtt.MqttClient;
import io.vertx.mqtt.MqttClientOptions;
import io.vertx.mqtt.messages.MqttPublishMessage;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One connection to the broker, made anew as often as it breaks, after a pause that doubles up to half a minute.
 *
 * <p>Every attempt has a client of its own, so that a late word on a message of a connection that is gone cannot be taken
 * for one on a message of the next.
 */
final class Link {

    private static final long FIRST_PAUSE_MS = 250;
    private static final long LONGEST_PAUSE_MS = 30_000;
    private static final long PROBE_PATIENCE_MS = 3_000;
    private static final long LOOK_AGAIN_MS = 50;

    /**
     * No limit: the decoder of Netty 4.1.133 takes a message whose head is split between two packets for one that is too
     * large, whatever the limit, and ends the connection. The broker has its own limit.
     */
    private static final int LARGEST_MESSAGE = Integer.MAX_VALUE;

    private static final int UNDER_WAY = 1_000;
    private static final String PROBE = "rootcast/probe/";

    private final MqttIngest ingest;
    private final MqttIngest.Broker broker;
    private final int number;
    private volatile boolean shared;
    private volatile boolean closed;
    private volatile boolean open;
    private volatile long pauseMs = FIRST_PAUSE_MS;
    private volatile int connected;
    private volatile @Nullable Instant connectedAt;
    private volatile @Nullable String lastError;
    private volatile @Nullable MqttClient client;

    Link(MqttIngest ingest, MqttIngest.Broker broker, int number) {
        this.ingest = ingest;
        this.broker = broker;
        this.number = number;
    }

    boolean isOpen() {
        return open;
    }

    @Nullable
    Instant connectedAt() {
        return connectedAt;
    }

    @Nullable
    String lastError() {
        return lastError;
    }

    int reconnects() {
        return Math.max(0, connected - 1);
    }

    /** Subscribes to a share of a topic of its own and sends there: a broker that shares sends it back. */
    void tryOutSharing() {
        if (closed) {
            return;
        }
        String id = broker.clientId() + "-probe";
        MqttClient probe = MqttClient.create(ingest.vertx(), options(id, true));
        boolean[] told = new boolean[1];
        Runnable done = () -> {
            if (!told[0]) {
                told[0] = true;
                probe.closeHandler(nothing -> {});
                probe.disconnect();
            }
        };
        probe.publishHandler(message -> {
            if (!told[0]) {
                done.run();
                ingest.sharingIs(true);
            }
        });
        probe.closeHandler(nothing -> again(told, this::tryOutSharing));
        probe.exceptionHandler(failed -> lastError = failed.getMessage());
        probe.connect(broker.port(), broker.host())
                .compose(ok -> probe.subscribe("$share/" + id + "/" + PROBE + id, MqttQoS.AT_MOST_ONCE.value()))
                .compose(ok -> probe.publish(PROBE + id, Buffer.buffer("0"), MqttQoS.AT_MOST_ONCE, false, false))
                .onSuccess(ok -> ingest.vertx().setTimer(PROBE_PATIENCE_MS, timer -> {
                    if (!told[0]) {
                        done.run();
                        ingest.sharingIs(false);
                    }
                }))
                .onFailure(failed -> {
                    lastError = failed.getMessage();
                    again(told, this::tryOutSharing);
                });
    }

    private void again(boolean[] told, Runnable attempt) {
        if (!told[0] && !closed) {
            told[0] = true;
            ingest.vertx().setTimer(nextPauseMs(), timer -> attempt.run());
        }
    }

    void open(boolean sharedByTheBroker) {
        shared = sharedByTheBroker;
        pauseMs = FIRST_PAUSE_MS;
        connect();
    }

    private void connect() {
        if (closed) {
            return;
        }
        boolean[] given = new boolean[1];
        MqttClient next = MqttClient.create(ingest.vertx(), options(broker.clientId() + "-" + number, false));
        client = next;
        next.publishHandler(message -> take(next, message));
        next.exceptionHandler(failed -> lastError = failed.getMessage());
        next.closeHandler(nothing -> lost(given));
        String wanted = shared ? broker.shared() : broker.topics();
        String other = shared ? broker.topics() : broker.shared();
        next.connect(broker.port(), broker.host())
                .compose(ok -> next.unsubscribe(other)) // a session of an earlier start may still have it
                .compose(ok -> next.subscribe(wanted, MqttQoS.AT_LEAST_ONCE.value()))
                .onSuccess(ok -> {
                    open = true;
                    connected++;
                    connectedAt = ingest.now();
                    pauseMs = FIRST_PAUSE_MS;
                })
                .onFailure(failed -> {
                    lastError = failed.getMessage();
                    if (next.isConnected()) {
                        next.disconnect();
                    }
                    lost(given);
                });
    }

    private void lost(boolean[] given) {
        open = false;
        if (!given[0] && !closed) {
            given[0] = true;
            ingest.vertx().setTimer(nextPauseMs(), timer -> connect());
        }
    }

    private long nextPauseMs() {
        long pause = pauseMs;
        pauseMs = Math.min(LONGEST_PAUSE_MS, pause * 2);
        return pause;
    }

    boolean send(String topic, String text) {
        MqttClient through = client;
        if (through == null || !through.isConnected()) {
            return false;
        }
        through.publish(topic, Buffer.buffer(text), MqttQoS.AT_LEAST_ONCE, false, false);
        return true;
    }

    void close() {
        closed = true;
        open = false;
        MqttClient last = client;
        if (last != null && last.isConnected()) {
            last.disconnect();
        }
    }

    private void take(MqttClient from, MqttPublishMessage message) {
        boolean answered = message.qosLevel() != MqttQoS.AT_MOST_ONCE;
        if (message.topicName().startsWith(PROBE)) {
            if (answered) {
                message.ack();
            }
            return;
        }
        ingest.arrivals()
                .add(new Arrival(
                        message.topicName(),
                        message.payload().toString(StandardCharsets.UTF_8),
                        message.isRetain(),
                        ingest.now(),
                        () -> acknowledge(from, message, answered)));
        if (ingest.arrivals().waiting() > Arrivals.MANY && !from.isPaused()) {
            from.pause();
            resumeWhenFewer(from);
        }
    }

    private void resumeWhenFewer(MqttClient from) {
        ingest.vertx().setTimer(LOOK_AGAIN_MS, timer -> {
            if (ingest.arrivals().waiting() < Arrivals.MANY / 2) {
                from.resume();
            } else if (from.isConnected()) {
                resumeWhenFewer(from);
            }
        });
    }

    private static void acknowledge(MqttClient from, MqttPublishMessage message, boolean answered) {
        if (answered && from.isConnected()) {
            message.ack();
        }
    }

    private MqttClientOptions options(String clientId, boolean forgotten) {
        MqttClientOptions options = new MqttClientOptions();
        options.setClientId(clientId)
                .setCleanSession(forgotten)
                .setMaxMessageSize(LARGEST_MESSAGE)
                .setMaxInflightQueue(UNDER_WAY)
                .setAutoKeepAlive(true)
                .setKeepAliveInterval(30)
                .setSsl(ingest.config().tls());
        options.setAutoAck(forgotten);
        ingest.config().username().ifPresent(options::setUsername);
        ingest.config().password().ifPresent(options::setPassword);
        return options;
    }
}
