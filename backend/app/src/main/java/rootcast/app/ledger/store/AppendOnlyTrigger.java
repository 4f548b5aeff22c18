package rootcast.app.ledger.store;

import java.sql.Connection;
import java.sql.SQLException;
import org.h2.api.Trigger;

/** H2's guard on the ledger's tables; PostgreSQL has its own in SQL. */
public class AppendOnlyTrigger implements Trigger {

    private String table = "";

    @Override
    public void init(Connection connection, String schema, String trigger, String tableName, boolean before, int type) {
        table = tableName;
    }

    @Override
    public void fire(Connection connection, Object[] oldRow, Object[] newRow) throws SQLException {
        throw new SQLException("the ledger is append-only: a change of " + table + " is refused");
    }
}
