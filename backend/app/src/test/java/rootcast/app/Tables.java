package rootcast.app;

import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import javax.sql.DataSource;

/** Looks at the tables by plain JDBC, past everything that the application does to them. */
public final class Tables {

    private final DataSource database;

    public Tables(DataSource database) {
        this.database = database;
    }

    /** Every row of every table; equal before and after means that nothing was written, not even a position. */
    public Map<String, List<String>> everything() {
        Map<String, List<String>> tables = new TreeMap<>();
        for (String table : names()) {
            tables.put(table, rows("select * from " + table));
        }
        return tables;
    }

    public long number(String query) {
        return Long.parseLong(rows(query).get(0));
    }

    /** One line per row, columns parted by a bar, in order of the lines. */
    public List<String> rows(String query) {
        List<String> rows = new ArrayList<>();
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement();
                ResultSet result = statement.executeQuery(query)) {
            int columns = result.getMetaData().getColumnCount();
            while (result.next()) {
                List<String> row = new ArrayList<>(columns);
                for (int column = 1; column <= columns; column++) {
                    row.add(result.getString(column));
                }
                rows.add(String.join("|", row.stream().map(String::valueOf).toList()));
            }
        } catch (SQLException failed) {
            throw new IllegalStateException(query, failed);
        }
        Collections.sort(rows);
        return rows;
    }

    public void execute(String statementText) throws SQLException {
        try (Connection connection = database.getConnection();
                Statement statement = connection.createStatement()) {
            statement.execute(statementText);
        }
    }

    private List<String> names() {
        return rows("select table_name from information_schema.tables where lower(table_schema) = 'public'"
                        + " and lower(table_name) not like 'flyway%'")
                .stream()
                .map(name -> '"' + name + '"')
                .toList();
    }
}
