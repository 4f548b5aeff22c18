package rootcast.app.climate.mqtt;

import io.moquette.broker.Server;
import io.moquette.broker.config.MemoryConfig;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.nio.file.Path;
import java.util.Properties;

/** A real MQTT broker on a port of its own, with a store that outlives it. It does not share subscriptions. */
public final class TestBroker implements AutoCloseable {

    private final Path store;
    private final int port;
    private Server server = new Server();

    public TestBroker(Path store) {
        this.store = store;
        try (ServerSocket any = new ServerSocket(0)) {
            port = any.getLocalPort();
        } catch (IOException none) {
            throw new UncheckedIOException(none);
        }
        start();
    }

    public int port() {
        return port;
    }

    public void start() {
        Properties settings = new Properties();
        settings.setProperty("host", "127.0.0.1");
        settings.setProperty("port", Integer.toString(port));
        settings.setProperty("allow_anonymous", "true");
        settings.setProperty("data_path", store.toString());
        settings.setProperty("persistence_enabled", "true");
        settings.setProperty("autosave_interval", "1");
        settings.setProperty("telemetry_enabled", "false");
        server = new Server();
        try {
            server.startServer(new MemoryConfig(settings));
        } catch (IOException failed) {
            throw new UncheckedIOException(failed);
        }
    }

    public void stop() {
        server.stopServer();
    }

    @Override
    public void close() {
        stop();
    }
}
