package rootcast.app.climate.csv;

import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.app.table.TextTable;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingUnit;
import rootcast.climate.TimeForm;
import rootcast.saying.Saying;

/**
 * How a table is to be read.
 *
 * @param decimal    point or comma
 * @param nameColumn whose cell says of each line which house or sensor it is of; null if the columns say it
 */
public record CsvPlan(
        char separator, char decimal, Times times, @Nullable String nameColumn, List<Column> columns) {

    /**
     * Where the time of a line stands.
     *
     * @param clockColumn with the time of day, where {@code column} holds the day alone; else null
     * @param between     what joins the two
     * @param localTaken  whether a time that states no offset is taken, as one of the series' own clock
     */
    public record Times(
            String column, @Nullable String clockColumn, String between, TimeForm form, boolean localTaken) {

        String of(TextTable.Line line) {
            String day = line.cell(column);
            return clockColumn == null ? day : day + between + line.cell(clockColumn);
        }
    }

    /** What a column's numbers are. */
    public interface Conversion {
        double kept(double shown);
    }

    /** What a number belongs to, by what its line's name cell says; in a table without such a column that is empty. */
    public interface Owner {
        Series named(String name) throws Nobody;
    }

    /** No house or sensor goes by that name. */
    public static final class Nobody extends Exception {
        private static final long serialVersionUID = 1L;

        private final transient Saying why;

        public Nobody(Saying why) {
            super(why.english(), null, false, false);
            this.why = why;
        }

        public Saying why() {
            return why;
        }
    }

    public record Column(String header, Owner owner) {}

    /**
     * @param zone   of the clock that its local times are read by, and that stated offsets are held against
     * @param sensor code, or {@link HouseReading#NO_SENSOR}
     */
    public record Series(
            String house,
            String site,
            ZoneId zone,
            Quantity quantity,
            String sensor,
            ReadingUnit unit,
            Conversion conversion) {}

    List<String> headers() {
        List<String> headers = new ArrayList<>(List.of(times.column()));
        if (times.clockColumn() != null) {
            headers.add(times.clockColumn());
        }
        if (nameColumn != null) {
            headers.add(nameColumn);
        }
        columns.forEach(column -> headers.add(column.header()));
        return headers;
    }
}
