package rootcast.app.climate.mqtt;

import io.netty.handler.codec.mqtt.MqttQoS;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.mqtt.MqttClient;
import io.vertx.mqtt.MqttClientOptions;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** A device: sends at QoS 1 and knows which of its messages the broker has taken. */
public final class TestPublisher implements AutoCloseable {

    /** Messages under way at a time, as devices do it. */
    private static final int WINDOW = 20;

    private final Vertx vertx;
    private final int port;
    private MqttClient client;
    private final Map<Integer, String> underWay = new ConcurrentHashMap<>();
    private final Set<Integer> early = ConcurrentHashMap.newKeySet();
    private volatile Semaphore window = new Semaphore(WINDOW);
    private final Set<String> taken = ConcurrentHashMap.newKeySet();

    public TestPublisher(Vertx vertx, int port) {
        this.vertx = vertx;
        this.port = port;
    }

    /** What the broker has said it has. */
    public Set<String> taken() {
        return taken;
    }

    public boolean connect() {
        underWay.clear();
        early.clear();
        window = new Semaphore(WINDOW);
        MqttClientOptions options = new MqttClientOptions()
                .setCleanSession(true)
                .setMaxInflightQueue(1_000)
                .setMaxMessageSize(Integer.MAX_VALUE);
        client = MqttClient.create(vertx, options);
        client.publishCompletionHandler(this::acknowledged);
        return waitFor(client.connect(port, "127.0.0.1"));
    }

    public boolean isConnected() {
        return client != null && client.isConnected();
    }

    /** @param key what the message is remembered by */
    public boolean send(String key, String topic, String payload) {
        return send(key, topic, payload, false);
    }

    private boolean send(String key, String topic, String payload, boolean retained) {
        try {
            if (!window.tryAcquire(20, TimeUnit.SECONDS)) {
                return false;
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return false;
        }
        return waitFor(client.publish(topic, Buffer.buffer(payload), MqttQoS.AT_LEAST_ONCE, false, retained)
                .onSuccess(id -> {
                    if (early.remove(id)) {
                        done(key);
                    } else {
                        underWay.put(id, key);
                    }
                }));
    }

    private void acknowledged(int id) {
        String key = underWay.remove(id);
        if (key != null) {
            done(key);
        } else {
            early.add(id);
        }
    }

    private void done(String key) {
        taken.add(key);
        window.release();
    }

    private static boolean waitFor(io.vertx.core.Future<?> future) {
        try {
            future.toCompletionStage().toCompletableFuture().get(20, TimeUnit.SECONDS);
            return true;
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
            return false;
        } catch (java.util.concurrent.ExecutionException | TimeoutException failed) {
            return false;
        }
    }

    @Override
    public void close() {
        if (isConnected()) {
            waitFor(client.disconnect());
        }
    }
}
