package rootcast.app.climate.csv;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.RecordReadings;
import rootcast.app.table.TextTable;
import rootcast.climate.LocalTimes;
import rootcast.climate.ReadingRemark;
import rootcast.saying.Saying;

/** The readings of a table, each with its line and column, and what of it cannot be read. */
final class CsvTable {

    private static final Pattern POINT = Pattern.compile("[+-]?(\\d+(\\.\\d*)?|\\.\\d+)([eE][+-]?\\d{1,2})?");
    private static final Pattern COMMA = Pattern.compile("[+-]?(\\d+(,\\d*)?|,\\d+)([eE][+-]?\\d{1,2})?");
    private static final int LONGEST_NUMBER = 40;

    private final CsvPlan plan;
    private final List<RecordReadings.Numbered> readings = new ArrayList<>();
    private final List<Place> places = new ArrayList<>();
    private final List<CsvReport.Line> remarks = new ArrayList<>();
    private int rows;

    /** Where a reading stands. */
    record Place(long line, String column) {}

    private CsvTable(CsvPlan plan) {
        this.plan = plan;
    }

    static CsvTable read(String text, CsvPlan plan) {
        CsvTable table = new CsvTable(plan);
        List<String> wanted = new ArrayList<>(List.of(plan.timeColumn()));
        plan.columns().forEach(column -> wanted.add(column.header()));
        LocalTimes times = new LocalTimes(plan.zone(), plan.format());
        TextTable.read(text, plan.separator(), wanted, line -> table.take(line, times));
        return table;
    }

    private void take(TextTable.Line row, LocalTimes times) {
        rows++;
        long line = row.number();
        if (!row.isWhole()) {
            refuse(line, null, Saying.of(ReadingRemark.OTHER_CELLS, row.size()));
            return;
        }
        LocalTimes.Read time;
        try {
            time = times.read(row.cell(plan.timeColumn()));
        } catch (LocalTimes.NoSuchTime none) {
            refuse(line, plan.timeColumn(), none.why());
            return;
        }
        if (time.note() != null) {
            remarks.add(new CsvReport.Line(line, plan.timeColumn(), "noted", "clock-change", time.note()));
        }
        for (CsvPlan.Column column : plan.columns()) {
            takeCell(row.cell(column.header()), column, line, time);
        }
    }

    /** An empty cell is no reading and no fault. */
    private void takeCell(String cell, CsvPlan.Column column, long line, LocalTimes.Read time) {
        if (cell.isEmpty()) {
            return;
        }
        Pattern number = plan.decimal() == ',' ? COMMA : POINT;
        if (cell.length() > LONGEST_NUMBER || !number.matcher(cell).matches()) {
            refuse(line, column.header(), Saying.of(ReadingRemark.NOT_A_NUMBER, cell));
            return;
        }
        double shown = Double.parseDouble(cell.replace(',', '.'));
        readings.add(new RecordReadings.Numbered(
                readings.size(),
                new HouseReading(
                        column.house(),
                        column.quantity(),
                        column.sensor(),
                        time.at(),
                        column.conversion().kept(shown),
                        shown,
                        column.unit().ucum())));
        places.add(new Place(line, column.header()));
    }

    private void refuse(long line, @Nullable String column, Saying why) {
        remarks.add(new CsvReport.Line(line, column, "refused", "unreadable", why));
    }

    List<RecordReadings.Numbered> readings() {
        return readings;
    }

    int rows() {
        return rows;
    }

    List<CsvReport.Line> remarks() {
        return remarks;
    }

    Place place(int reading) {
        return places.get(reading);
    }

    /** Where the readings stand, by series, sensor and moment; of two at one moment the first. */
    Map<String, Place> byMoment() {
        Map<String, Place> byMoment = new HashMap<>();
        readings.forEach(each -> byMoment.putIfAbsent(
                key(each.reading().of(), each.reading().sensor(), each.reading().at()), place(each.index())));
        return byMoment;
    }

    static String key(rootcast.app.climate.HouseQuantity of, String sensor, java.time.Instant at) {
        return of.house() + '|' + of.quantity() + '|' + sensor + '|' + at;
    }
}
