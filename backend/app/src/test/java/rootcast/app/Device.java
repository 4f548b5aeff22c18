package rootcast.app;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Queue;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentLinkedQueue;
import java.util.concurrent.locks.LockSupport;
import java.util.function.IntFunction;
import rootcast.app.climate.mqtt.TestPublisher;

/** Sends readings at a steady rate, keeps each until the broker has acknowledged it, and sends it again otherwise. */
final class Device {

    private final TestPublisher publisher;
    private final int perSecond;
    private final IntFunction<Sent> readings;
    private final Queue<Sent> unsaid = new ConcurrentLinkedQueue<>();
    private final Map<String, Sent> all = new ConcurrentHashMap<>();
    private final Thread sending = new Thread(this::send, "device");
    private volatile boolean ending;
    private int number;

    /** @param key what the reading is known by, here and in the database */
    record Sent(String key, String topic, String payload) {}

    /** @param readings gives the reading of a number */
    Device(TestPublisher publisher, int perSecond, IntFunction<Sent> readings) {
        this.publisher = publisher;
        this.perSecond = perSecond;
        this.readings = readings;
    }

    void start() {
        sending.start();
    }

    /** Returns once the broker has all that was begun. */
    void end() throws InterruptedException {
        ending = true;
        sending.join();
    }

    /** Keys of what the broker has acknowledged. */
    Set<String> taken() {
        return publisher.taken();
    }

    private void send() {
        long begun = System.nanoTime();
        while (!ending || !unsaid.isEmpty()) {
            if (!publisher.isConnected() && !publisher.connect()) {
                pause(Duration.ofMillis(100));
                all.values().stream()
                        .filter(each -> !publisher.taken().contains(each.key()))
                        .filter(each -> !unsaid.contains(each))
                        .forEach(unsaid::add);
                continue;
            }
            Sent next = unsaid.poll();
            if (next == null) {
                next = readings.apply(number++);
                all.put(next.key(), next);
            }
            if (!publisher.send(next.key(), next.topic(), next.payload())) {
                unsaid.add(next);
            }
            long due = begun + number * 1_000_000_000L / perSecond;
            LockSupport.parkNanos(Math.max(0, due - System.nanoTime()));
        }
    }

    /** As a device with a memory does after a fault: what is stored already must not be doubled. */
    void sendEverythingAgain() {
        for (Sent each : all.values()) {
            if (!publisher.isConnected() && !publisher.connect()
                    || !publisher.send(each.key(), each.topic(), each.payload())) {
                throw new IllegalStateException("the broker does not take " + each);
            }
        }
    }

    static void pause(Duration length) {
        long end = System.nanoTime() + length.toNanos();
        while (System.nanoTime() < end) {
            LockSupport.parkNanos(end - System.nanoTime());
        }
    }

    /** A reading with a time of its own, a hundred a second from {@code began} on. */
    static Sent timed(String topic, Instant began, int number) {
        Instant at = began.plusMillis(number * 10L);
        return new Sent(topic + at, topic, "{\"value\": %s, \"at\": \"%s\"}".formatted(21 + number % 9 / 10.0, at));
    }
}
