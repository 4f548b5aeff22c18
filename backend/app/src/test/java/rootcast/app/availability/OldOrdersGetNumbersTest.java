package rootcast.app.availability;

import static org.assertj.core.api.Assertions.assertThat;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import javax.sql.DataSource;
import org.flywaydb.core.Flyway;
import org.h2.jdbcx.JdbcDataSource;
import org.junit.jupiter.api.Test;

/** Orders from before they had numbers get them in the order in which they were placed, on either database. */
class OldOrdersGetNumbersTest {

    @Test
    void onH2() throws SQLException {
        JdbcDataSource database = new JdbcDataSource();
        database.setURL("jdbc:h2:mem:old-orders;DB_CLOSE_DELAY=-1");
        assertThat(customersByNumber(database, "h2")).containsExactly("1 first", "2 second", "3 third");
    }

    @Test
    void onPostgres() throws SQLException, IOException {
        try (EmbeddedPostgres server = EmbeddedPostgres.builder().start()) {
            assertThat(customersByNumber(server.getPostgresDatabase(), "postgresql"))
                    .containsExactly("1 first", "2 second", "3 third");
        }
    }

    private static List<String> customersByNumber(DataSource database, String kind) throws SQLException {
        migrate(database, kind, "13");
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            // Neither the rows' own order nor that of their ids is that of placing.
            statement.execute(old("00000000-0000-4000-8000-000000000001", "third", 41));
            statement.execute(old("00000000-0000-4000-8000-000000000003", "first", 7));
            statement.execute(old("00000000-0000-4000-8000-000000000002", "second", 19));
        }
        migrate(database, kind, "14");
        List<String> found = new ArrayList<>();
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet rows =
                        statement.executeQuery("select order_no, customer from customer_order order by order_no")) {
            while (rows.next()) {
                found.add(rows.getLong(1) + " " + rows.getString(2));
            }
        }
        return found;
    }

    private static void migrate(DataSource database, String kind, String target) {
        Flyway.configure()
                .dataSource(database)
                .locations("db/migration", "db/" + kind)
                .target(target)
                .load()
                .migrate();
    }

    private static String old(String id, String customer, long position) {
        return "insert into customer_order (id, customer, confidence, recorded_at, position_no) values ('" + id + "', '"
                + customer + "', 0.9, timestamp with time zone '2026-03-02 10:00:00+00:00', " + position + ")";
    }
}
