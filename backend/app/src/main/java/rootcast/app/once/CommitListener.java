package rootcast.app.once;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.Properties;
import org.eclipse.microprofile.config.ConfigProvider;
import org.jboss.logging.Logger;
import org.postgresql.PGConnection;

/**
 * Hears on PostgreSQL what other nodes have committed, on a connection of its own.
 *
 * <p>Source: PostgreSQL manual, LISTEN and NOTIFY: a notification is delivered when its transaction commits. A connection
 * that was lost hears nothing of what happened meanwhile; so each one begins with a wake-up, and the projector looks by
 * the clock too.
 */
@ApplicationScoped
class CommitListener {

    static final String CHANNEL = "rootcast_commits";

    private static final Logger LOG = Logger.getLogger(CommitListener.class);
    private static final int HEARD_WITHIN_MS = 5_000;
    private static final Duration TRIED_AGAIN_AFTER = Duration.ofSeconds(1);

    @Inject
    Commits commits;

    @Inject
    Pause pause;

    private volatile boolean stopped;
    private volatile Connection listening;

    void start(@Observes @Priority(90) StartupEvent event) {
        if (setting("quarkus.datasource.db-kind").equals("postgresql")) {
            Thread thread = new Thread(this::listen, "commit-listener");
            thread.setDaemon(true);
            thread.start();
        }
    }

    void stop(@Observes ShutdownEvent event) throws SQLException {
        stopped = true;
        Connection open = listening;
        if (open != null) {
            open.close();
        }
    }

    private void listen() {
        while (!stopped) {
            try (Connection connection = connect();
                    Statement statement = connection.createStatement()) {
                listening = connection;
                statement.execute("listen " + CHANNEL);
                commits.wake();
                PGConnection postgres = connection.unwrap(PGConnection.class);
                while (!stopped) {
                    var heard = postgres.getNotifications(HEARD_WITHIN_MS);
                    if (heard != null && heard.length > 0) {
                        commits.wake();
                    }
                }
            } catch (SQLException lost) {
                if (!stopped) {
                    LOG.warnf("does not hear of other nodes for now: %s", lost.getMessage());
                    pause.of(TRIED_AGAIN_AFTER);
                }
            }
        }
    }

    private static Connection connect() throws SQLException {
        Properties settings = new Properties();
        settings.setProperty("user", setting("quarkus.datasource.username"));
        settings.setProperty("password", setting("quarkus.datasource.password"));
        settings.setProperty("tcpKeepAlive", "true");
        settings.setProperty("ApplicationName", "rootcast listener");
        return DriverManager.getConnection(setting("quarkus.datasource.jdbc.url"), settings);
    }

    private static String setting(String name) {
        return ConfigProvider.getConfig().getOptionalValue(name, String.class).orElse("");
    }
}
