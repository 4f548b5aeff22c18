package rootcast.app.wiring;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.flywaydb.core.Flyway;
import org.flywaydb.core.api.callback.Callback;
import org.flywaydb.core.api.callback.Context;
import org.flywaydb.core.api.callback.Event;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** While tables are made statements share the disk; afterwards every commit goes through to it (docs/decisions/0003). */
class MigrationsAreQuickAndThenDurableTest {

    @TempDir
    Path folder;

    @Test
    void onlyWhileTablesAreMadeMayACommitWait() throws SQLException {
        String url = "jdbc:h2:file:" + folder.resolve("rootcast") + ";WRITE_DELAY=0";
        List<String> during = new ArrayList<>();
        // One connection stays open all the while, so that opening another is not what sets it back.
        try (Connection kept = DriverManager.getConnection(url)) {
            Flyway flyway = Flyway.configure()
                    .dataSource(url, null, null)
                    .locations("db/migration", "db/h2")
                    .callbacks(new EachMigration(() -> during.add(writeDelay(kept))))
                    .load();

            assertThat(flyway.migrate().success).isTrue();

            assertThat(during).isNotEmpty().containsOnly("1000");
            assertThat(writeDelay(kept)).isEqualTo("0");
        }
    }

    private static String writeDelay(Connection connection) {
        try (Statement statement = connection.createStatement();
                ResultSet row = statement.executeQuery(
                        "select setting_value from information_schema.settings where setting_name = 'WRITE_DELAY'")) {
            return row.next() ? row.getString(1) : "not said";
        } catch (SQLException fault) {
            throw new IllegalStateException(fault);
        }
    }

    private record EachMigration(Runnable look) implements Callback {

        @Override
        public boolean supports(Event event, Context context) {
            return event == Event.AFTER_EACH_MIGRATE;
        }

        @Override
        public boolean canHandleInTransaction(Event event, Context context) {
            return true;
        }

        @Override
        public void handle(Event event, Context context) {
            look.run();
        }

        @Override
        public String getCallbackName() {
            return "look";
        }
    }
}
