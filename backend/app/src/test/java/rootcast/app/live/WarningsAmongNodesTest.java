package rootcast.app.live;

import static org.assertj.core.api.Assertions.assertThat;

import io.agroal.api.AgroalDataSource;
import io.quarkus.test.common.http.TestHTTPResource;
import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import jakarta.inject.Inject;
import java.net.URI;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.postgresql.PGConnection;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.OnPostgres;
import rootcast.app.Tables;

/** What one node knows of warnings, the screens of the others hear: the other node is played by plain SQL. */
@QuarkusTest
@TestProfile(OnPostgres.class)
class WarningsAmongNodesTest {

    private static final int PATIENCE_MS = 60_000;

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    @TestHTTPResource
    URI base;

    private Nursery nursery;

    @BeforeEach
    void open() {
        nursery = Nursery.opened(time);
    }

    @Test
    void anotherNodesWarningReachesTheScreensOfThisOne() throws Exception {
        String warning = UUID.randomUUID().toString();
        try (LiveScreen screen = LiveScreen.open(base, "?weeks=4", null)) {
            screen.next(event -> event.name().equals("hello"));

            new Tables(database)
                    .execute("select pg_notify('rootcast_warnings', 'another-node %s %s')"
                            .formatted(nursery.site, warning));

            LiveScreen.Event heard = screen.next(event -> event.name().equals("warnings"));
            assertThat(heard.json().getString("site")).isEqualTo(nursery.site);
            assertThat(heard.json().getList("ids")).containsExactly(warning);
        }
    }

    @Test
    void otherNodesAreToldOfAWarningThatWasSeenHereAndThisOneSaysItOnce() throws Exception {
        String warning = warning();
        try (LiveScreen screen = LiveScreen.open(base, "?weeks=4", null);
                Connection other = database.getConnection();
                Statement statement = other.createStatement()) {
            screen.next(event -> event.name().equals("hello"));
            statement.execute("listen rootcast_warnings");

            nursery.post("/api/warnings/" + warning + "/acknowledgement", Map.of("text", "seen"))
                    .statusCode(200);

            List<String> told = told(other);
            statement.execute("unlisten *"); // the connection goes back to the pool
            assertThat(told).anySatisfy(text -> assertThat(text).endsWith(nursery.site + " " + warning));
            screen.next(event -> event.name().equals("warnings"));
            // A beat comes after whatever was on its way: a second one would have been heard before it.
            LiveScreen.Event next =
                    screen.next(event -> List.of("warnings", "beat").contains(event.name()));
            assertThat(next.name()).isEqualTo("beat");
        }
    }

    private static List<String> told(Connection other) throws SQLException {
        return Stream.of(other.unwrap(PGConnection.class).getNotifications(PATIENCE_MS))
                .map(each -> each.getParameter())
                .toList();
    }

    private String warning() throws SQLException {
        String id = UUID.randomUUID().toString();
        new Tables(database)
                .execute(("insert into warning_log (id, kind, site, house, since_at, raised_at, unit, batches,"
                                + " first_seen_at) values ('%s', 'AIR_COLD', '%s', '%s', timestamp with time zone '%s',"
                                + " timestamp with time zone '%s', 'Cel', '', timestamp with time zone '%s')")
                        .formatted(
                                id,
                                nursery.site,
                                nursery.house,
                                time.instant().minus(Duration.ofHours(2)),
                                time.instant().minus(Duration.ofHours(1)),
                                time.instant().minus(Duration.ofHours(1))));
        return id;
    }
}
