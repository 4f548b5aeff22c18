package rootcast.app.climate.mqtt;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetSocketAddress;
import java.net.ServerSocket;
import java.net.Socket;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.locks.LockSupport;

/**
 * A real MQTT broker as a process of its own, on a port and with a store that outlive it. It does not share
 * subscriptions.
 */
public final class TestBroker implements AutoCloseable {

    private static final Duration PATIENCE = Duration.ofMinutes(2);

    private final Path store;
    private final int port;
    private Process process;

    public TestBroker(Path store) {
        this.store = store;
        try (ServerSocket any = new ServerSocket(0)) {
            port = any.getLocalPort();
        } catch (IOException none) {
            throw new UncheckedIOException(none);
        }
        try {
            Files.createDirectories(store.resolve("config"));
            Files.writeString(store.resolve("config").resolve("moquette.conf"), """
                    host 127.0.0.1
                    port %d
                    allow_anonymous true
                    data_path %s
                    persistence_enabled true
                    autosave_interval 1
                    telemetry_enabled false
                    netty.mqtt.message_size 1000000
                    """.formatted(port, store));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        start();
    }

    public int port() {
        return port;
    }

    /** Starts it and waits until it can be connected to. */
    public void start() {
        try {
            process = new ProcessBuilder(List.of(
                            Path.of(System.getProperty("java.home"), "bin", "java")
                                    .toString(),
                            "-Xmx192m",
                            "-XX:+UseSerialGC",
                            "-XX:TieredStopAtLevel=1",
                            "-Dmoquette.path=" + store,
                            "-cp",
                            Path.of("target", "broker").toAbsolutePath() + "/*",
                            "io.moquette.broker.Server"))
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.appendTo(
                            store.resolve("broker.log").toFile()))
                    .start();
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
        long end = System.nanoTime() + PATIENCE.toNanos();
        while (!listens()) {
            if (!process.isAlive() || System.nanoTime() > end) {
                throw new IllegalStateException("no broker:\n" + log());
            }
            LockSupport.parkNanos(Duration.ofMillis(50).toNanos());
        }
    }

    private boolean listens() {
        try (Socket socket = new Socket()) {
            socket.connect(new InetSocketAddress("127.0.0.1", port), 500);
            return true;
        } catch (IOException notYet) {
            return false;
        }
    }

    private String log() {
        try {
            return Files.readString(store.resolve("broker.log"));
        } catch (IOException none) {
            return none.toString();
        }
    }

    /** Lets it write down what it holds. */
    public void stop() {
        process.destroy();
        await();
    }

    /** SIGKILL. What it had not written down is gone, whatever it had told the devices. */
    public void kill() {
        process.destroyForcibly();
        await();
    }

    private void await() {
        try {
            if (!process.waitFor(1, TimeUnit.MINUTES)) {
                process.destroyForcibly();
                throw new IllegalStateException("the broker does not end:\n" + log());
            }
        } catch (InterruptedException stopped) {
            Thread.currentThread().interrupt();
        }
    }

    @Override
    public void close() {
        if (process.isAlive()) {
            kill();
        }
    }
}
