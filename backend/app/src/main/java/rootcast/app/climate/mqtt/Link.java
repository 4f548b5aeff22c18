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
    private static final long LOOK_AGAIN_MS = 50;

    /**
     * No limit: the decoder of Netty 4.1.133 takes a message whose head is split between two packets for one that is too
     * large, whatever the limit, and ends the connection. The broker has its own limit.
     */
    private static final int LARGEST_MESSAGE = Integer.MAX_VALUE;

    private static final int UNDER_WAY = 1_000;

    private final MqttIngest ingest;
    private final MqttIngest.Broker broker;
    private volatile boolean closed;
    private volatile boolean open;
    private volatile long pauseMs = FIRST_PAUSE_MS;
    private volatile int connected;
    private volatile @Nullable Instant connectedAt;
    private volatile @Nullable String lastError;
    private volatile @Nullable MqttClient client;

    Link(MqttIngest ingest, MqttIngest.Broker broker) {
        this.ingest = ingest;
        this.broker = broker;
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

    void open() {
        connect();
    }

    private void connect() {
        if (closed) {
            return;
        }
        if (!ingest.mayConnect()) {
            // another node may have the session by now, and would lose it to us
            ingest.vertx().setTimer(FIRST_PAUSE_MS, timer -> connect());
            return;
        }
        boolean[] given = new boolean[1];
        MqttClient next = MqttClient.create(ingest.vertx(), options());
        client = next;
        next.publishHandler(message -> take(next, message));
        next.exceptionHandler(failed -> lastError = failed.getMessage());
        next.closeHandler(nothing -> lost(given));
        next.connect(broker.port(), broker.host())
                .compose(ok -> next.subscribe(broker.topics(), MqttQoS.AT_LEAST_ONCE.value()))
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
        ingest.arrivals()
                .add(new Message(
                        message.topicName(),
                        message.payload().toString(StandardCharsets.UTF_8),
                        message.isRetain(),
                        answered ? message.messageId() : -1,
                        message.isDup(),
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

    private MqttClientOptions options() {
        MqttClientOptions options = new MqttClientOptions();
        options.setClientId(broker.clientId())
                .setCleanSession(false)
                .setMaxMessageSize(LARGEST_MESSAGE)
                .setMaxInflightQueue(UNDER_WAY)
                .setAutoKeepAlive(true)
                .setKeepAliveInterval(30)
                .setSsl(ingest.config().tls());
        options.setAutoAck(false);
        ingest.config().username().ifPresent(options::setUsername);
        ingest.config().password().ifPresent(options::setPassword);
        return options;
    }
}
