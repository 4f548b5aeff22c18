package rootcast.app.node;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Event;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.Properties;
import java.util.concurrent.locks.LockSupport;
import org.eclipse.microprofile.config.ConfigProvider;
import org.jboss.logging.Logger;
import org.postgresql.PGConnection;

/**
 * Nodes over one PostgreSQL tell one another what they have done, and each hears it on a connection of its own. Over the
 * embedded database there is one node, and nobody to tell.
 *
 * <p>Source: PostgreSQL manual, LISTEN and NOTIFY: a notification is delivered when its transaction commits, to the one
 * who sent it too. A connection that was lost hears nothing of what happened meanwhile; so each one begins by saying on
 * every channel that something may have happened.
 */
@ApplicationScoped
public class OtherNodes {

    private static final Logger LOG = Logger.getLogger(OtherNodes.class);
    private static final int HEARD_WITHIN_MS = 5_000;
    private static final Duration TRIED_AGAIN_AFTER = Duration.ofSeconds(1);

    @Inject
    EntityManager database;

    @Inject
    Event<NodeSaid> heard;

    private volatile boolean stopped;
    private volatile Connection listening;

    void start(@Observes @Priority(90) StartupEvent event) {
        if (areThere()) {
            Thread thread = new Thread(this::listen, "listener-to-nodes");
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

    /** Whether this database may have other nodes. */
    public boolean areThere() {
        return setting("quarkus.datasource.db-kind").equals("postgresql");
    }

    /**
     * Tells every node, this one too: with the commit of the transaction, and not at all if that is rolled back. Nothing
     * happens where there are no other nodes.
     *
     * @param text at most 7 999 bytes
     */
    @Transactional
    public void tell(NodeChannel channel, String text) {
        if (areThere()) {
            database.createNativeQuery("select pg_notify(?1, ?2)", Object.class)
                    .setParameter(1, channel.sqlName())
                    .setParameter(2, text)
                    .getSingleResult();
        }
    }

    private void listen() {
        while (!stopped) {
            try (Connection connection = connect();
                    Statement statement = connection.createStatement()) {
                listening = connection;
                for (NodeChannel channel : NodeChannel.values()) {
                    statement.execute("listen " + channel.sqlName());
                }
                for (NodeChannel channel : NodeChannel.values()) {
                    heard.fire(new NodeSaid(channel, ""));
                }
                PGConnection postgres = connection.unwrap(PGConnection.class);
                while (!stopped) {
                    passOn(postgres);
                }
            } catch (SQLException lost) {
                if (!stopped) {
                    LOG.warnf("does not hear of other nodes for now: %s", lost.getMessage());
                    LockSupport.parkNanos(TRIED_AGAIN_AFTER.toNanos());
                }
            }
        }
    }

    private void passOn(PGConnection postgres) throws SQLException {
        var said = postgres.getNotifications(HEARD_WITHIN_MS);
        if (said == null) {
            return;
        }
        for (var each : said) {
            heard.fire(new NodeSaid(NodeChannel.of(each.getName()), each.getParameter()));
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
