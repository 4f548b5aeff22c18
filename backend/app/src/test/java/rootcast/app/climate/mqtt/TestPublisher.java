package rootcast.app.climate.mqtt;

import io.netty.handler.codec.mqtt.MqttQoS;
import io.vertx.core.Vertx;
import io.vertx.core.buffer.Buffer;
import io.vertx.mqtt.MqttClient;
import io.vertx.mqtt.MqttClientOptions;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;

/** A device: sends at QoS 1 and knows which of its messages the broker has taken. */
public final class TestPublisher implements AutoCloseable {

    private final Vertx vertx;
    private final int port;
    private MqttClient client;
    private final Map<Integer, String> underWay = new ConcurrentHashMap<>();
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
        MqttClientOptions options =
                new MqttClientOptions().setCleanSession(true).setMaxInflightQueue(60_000);
        client = MqttClient.create(vertx, options);
        client.publishCompletionHandler(id -> {
            String key = underWay.remove(id);
            if (key != null) {
                taken.add(key);
            }
        });
        return waitFor(client.connect(port, "127.0.0.1"));
    }

    public boolean isConnected() {
        return client != null && client.isConnected();
    }

    /** @param key what the message is remembered by */
    public boolean send(String key, String topic, String payload) {
        return send(key, topic, payload, false);
    }

    public boolean send(String key, String topic, String payload, boolean retained) {
        return waitFor(client.publish(topic, Buffer.buffer(payload), MqttQoS.AT_LEAST_ONCE, false, retained)
                .onSuccess(id -> underWay.put(id, key)));
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
