package rootcast.app.climate.csv;

import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingUnit;

/**
 * How a table is to be read.
 *
 * @param decimal point or comma
 * @param zone    of its times; null if each carries its offset
 * @param format  of its times, if there is a zone
 */
public record CsvPlan(
        char separator,
        char decimal,
        String timeColumn,
        @Nullable ZoneId zone,
        DateTimeFormatter format,
        List<Column> columns) {

    /** What a column's numbers are. */
    public interface Conversion {
        double kept(double shown);
    }

    /** @param sensor code, or {@link HouseReading#NO_SENSOR} */
    public record Column(
            String header, String house, Quantity quantity, String sensor, ReadingUnit unit, Conversion conversion) {}
}
