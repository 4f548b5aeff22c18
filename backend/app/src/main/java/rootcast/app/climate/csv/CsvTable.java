package rootcast.app.climate.csv;

import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.regex.Pattern;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.RecordReadings;
import rootcast.app.problem.Problem;
import rootcast.climate.LocalTimes;
import rootcast.climate.ReadingRemark;
import rootcast.saying.Fault;
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
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setDelimiter(plan.separator())
                .setHeader()
                .setSkipHeaderRecord(true)
                .setIgnoreEmptyLines(true)
                .setTrim(true)
                .get();
        CsvTable table = new CsvTable(plan);
        try (CSVParser parser = CSVParser.builder()
                .setReader(new StringReader(text.startsWith("\uFEFF") ? text.substring(1) : text))
                .setFormat(format)
                .get()) {
            table.checkHeader(parser.getHeaderNames());
            LocalTimes times = new LocalTimes(plan.zone(), plan.format());
            for (CSVRecord row : parser) {
                table.take(row, parser.getCurrentLineNumber(), times);
            }
        } catch (IOException | UncheckedIOException | IllegalArgumentException | IllegalStateException broken) {
            throw Problem.malformed("csv", Fault.NOT_A_TABLE);
        }
        return table;
    }

    private void checkHeader(List<String> header) {
        List<String> wanted = new ArrayList<>(List.of(plan.timeColumn()));
        plan.columns().forEach(column -> wanted.add(column.header()));
        for (String name : wanted) {
            if (!header.contains(name)) {
                throw Problem.malformed("columns", Fault.NOT_IN_HEADER, name, header);
            }
        }
    }

    private void take(CSVRecord row, long line, LocalTimes times) {
        rows++;
        if (!row.isConsistent()) {
            refuse(line, null, Saying.of(ReadingRemark.OTHER_CELLS, row.size()));
            return;
        }
        LocalTimes.Read time;
        try {
            time = times.read(row.get(plan.timeColumn()));
        } catch (LocalTimes.NoSuchTime none) {
            refuse(line, plan.timeColumn(), none.why());
            return;
        }
        if (time.note() != null) {
            remarks.add(new CsvReport.Line(line, plan.timeColumn(), "noted", "clock-change", time.note()));
        }
        for (CsvPlan.Column column : plan.columns()) {
            takeCell(row.get(column.header()), column, line, time);
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
