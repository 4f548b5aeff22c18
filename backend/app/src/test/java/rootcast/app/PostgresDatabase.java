package rootcast.app;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;

/** A real PostgreSQL of its own on a free port, thrown away afterwards. */
public class PostgresDatabase implements QuarkusTestResourceLifecycleManager {

    private EmbeddedPostgres server;

    @Override
    public Map<String, String> start() {
        try {
            server = EmbeddedPostgres.builder().start();
        } catch (IOException noServer) {
            throw new UncheckedIOException(noServer);
        }
        return Map.of(
                "quarkus.datasource.jdbc.url",
                server.getJdbcUrl("postgres", "postgres"),
                "quarkus.datasource.username",
                "postgres");
    }

    @Override
    public void stop() {
        try {
            if (server != null) {
                server.close();
            }
        } catch (IOException stillRunning) {
            throw new UncheckedIOException(stillRunning);
        }
    }
}
