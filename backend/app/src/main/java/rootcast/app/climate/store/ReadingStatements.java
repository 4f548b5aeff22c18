package rootcast.app.climate.store;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import rootcast.app.climate.HouseQuantity;
import rootcast.app.climate.HouseReading;
import rootcast.climate.HourlySeries;

/**
 * The statements that carry the weight of ingest, in plain SQL that H2 and PostgreSQL share: some hundred rows to a
 * statement cost a fraction of as many statements.
 */
final class ReadingStatements {

    /** Powers of two, so that few different statements are prepared. */
    private static final int MOST_ROWS = 256;

    private static final String INSERT = "insert into reading (house, quantity, sensor, measured_at, reading_value,"
            + " sent_value, sent_unit, is_late, recorded_at, position_no) values ";
    private static final String ROW = "(?, ?, ?, ?, ?, ?, ?, ?, ?, ?)";

    private ReadingStatements() {}

    static void insert(
            Connection connection, List<HouseReading> added, long position, Instant recordedAt, Instant lateBefore)
            throws SQLException {
        int done = 0;
        for (int rows = MOST_ROWS; rows > 0; rows /= 2) {
            if (added.size() - done < rows) {
                continue;
            }
            String sql = INSERT + (ROW + ", ").repeat(rows - 1) + ROW;
            try (PreparedStatement statement = connection.prepareStatement(sql)) {
                while (added.size() - done >= rows) {
                    bind(statement, added.subList(done, done + rows), position, recordedAt, lateBefore);
                    statement.executeUpdate();
                    done += rows;
                }
            }
        }
    }

    private static void bind(
            PreparedStatement statement,
            List<HouseReading> readings,
            long position,
            Instant recordedAt,
            Instant lateBefore)
            throws SQLException {
        OffsetDateTime recorded = stored(recordedAt);
        int at = 0;
        for (HouseReading reading : readings) {
            statement.setString(++at, reading.house());
            statement.setString(++at, reading.quantity().wireName());
            statement.setString(++at, reading.sensor());
            statement.setObject(++at, stored(reading.at()));
            statement.setDouble(++at, reading.value());
            statement.setDouble(++at, reading.sent());
            statement.setString(++at, reading.sentUnit());
            statement.setBoolean(++at, reading.at().isBefore(lateBefore));
            statement.setObject(++at, recorded);
            statement.setLong(++at, position);
        }
    }

    static void putHours(Connection connection, List<Readings.Hour> hours, long position) throws SQLException {
        try (PreparedStatement update = connection.prepareStatement(
                        "update reading_hour set total_micro = ?, readings = ?, left_out = ?,"
                                + " position_no = ? where house = ? and quantity = ? and hour_start = ?");
                PreparedStatement insert =
                        connection.prepareStatement("insert into reading_hour (total_micro, readings, left_out,"
                                + " position_no, house, quantity, hour_start) values (?, ?, ?, ?, ?, ?, ?)")) {
            boolean updates = false;
            boolean inserts = false;
            for (Readings.Hour hour : hours) {
                PreparedStatement statement = hour.isStored() ? update : insert;
                statement.setLong(1, hour.totalMicro());
                statement.setInt(2, hour.readings());
                statement.setInt(3, hour.leftOut());
                statement.setLong(4, position);
                statement.setString(5, hour.house());
                statement.setString(6, hour.quantity().wireName());
                statement.setObject(7, stored(hour.hourStart()));
                statement.addBatch();
                updates |= hour.isStored();
                inserts |= !hour.isStored();
            }
            if (updates) {
                update.executeBatch();
            }
            if (inserts) {
                insert.executeBatch();
            }
        }
    }

    /** Marks the hours of these readings: their sums stay as they are. */
    static void settle(Connection connection, List<HouseReading> readings) throws SQLException {
        Map<HouseQuantity, Set<Long>> hours = new HashMap<>();
        for (HouseReading reading : readings) {
            hours.computeIfAbsent(reading.of(), any -> new TreeSet<>()).add(HourlySeries.hourOf(reading.at()));
        }
        try (PreparedStatement statement = connection.prepareStatement(
                "update reading_hour set settled = true where house = ? and quantity = ? and hour_start = ?")) {
            for (var series : hours.entrySet()) {
                for (long hour : series.getValue()) {
                    statement.setString(1, series.getKey().house());
                    statement.setString(2, series.getKey().quantity().wireName());
                    statement.setObject(3, stored(HourlySeries.startOf(hour)));
                    statement.addBatch();
                }
            }
            statement.executeBatch();
        }
    }

    private static OffsetDateTime stored(Instant at) {
        return at.atOffset(ZoneOffset.UTC);
    }
}
