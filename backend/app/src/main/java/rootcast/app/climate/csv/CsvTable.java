package rootcast.app.climate.csv;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.RecordReadings;
import rootcast.app.table.TextTable;
import rootcast.climate.LocalTimes;
import rootcast.climate.ReadingRemark;
import rootcast.climate.TimeForm;
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
    private final Map<Clock, LocalTimes> clocks = new HashMap<>();
    private final Map<String, Span> spans = new TreeMap<>();
    private int rows;

    private record Clock(String name, ZoneId zone) {}

    /** From the first to the last reading of a site, both included, and the clock that they were read by. */
    record Span(ZoneId zone, Instant first, Instant last) {
        Span with(Span other) {
            return new Span(
                    zone,
                    other.first.isBefore(first) ? other.first : first,
                    other.last.isAfter(last) ? other.last : last);
        }
    }

    /** Where a reading stands. */
    record Place(long line, String column) {}

    private CsvTable(CsvPlan plan) {
        this.plan = plan;
    }

    static CsvTable read(String text, CsvPlan plan) {
        CsvTable table = new CsvTable(plan);
        TextTable.read(text, plan.separator(), plan.headers(), table::take);
        return table;
    }

    private void take(TextTable.Line row) {
        rows++;
        long line = row.number();
        if (!row.isWhole()) {
            refuse(line, null, Saying.of(ReadingRemark.OTHER_CELLS, row.size()));
            return;
        }
        CsvPlan.Times times = plan.times();
        TimeForm.Written written;
        try {
            written = times.form().read(times.of(row));
        } catch (LocalTimes.NoSuchTime none) {
            refuse(line, times.column(), none.why());
            return;
        }
        if (written.said() == null && !times.localTaken()) {
            refuse(line, times.column(), Saying.of(ReadingRemark.NO_OFFSET, written.text()));
            return;
        }
        String name = plan.nameColumn() == null ? "" : row.cell(plan.nameColumn());
        Moments moments = new Moments(line, name, written);
        for (CsvPlan.Column column : plan.columns()) {
            String cell = row.cell(column.header());
            // An empty cell is no reading and no fault.
            if (!cell.isEmpty()) {
                try {
                    takeCell(cell, line, column.header(), column.owner().named(name), moments);
                } catch (CsvPlan.Nobody unknown) {
                    refuse(line, plan.nameColumn(), unknown.why());
                    return;
                }
            }
        }
    }

    private void takeCell(String cell, long line, String header, CsvPlan.Series series, Moments moments) {
        Instant at = moments.of(series.zone());
        if (at == null) {
            return;
        }
        Pattern number = plan.decimal() == ',' ? COMMA : POINT;
        if (cell.length() > LONGEST_NUMBER || !number.matcher(cell).matches()) {
            refuse(line, header, Saying.of(ReadingRemark.NOT_A_NUMBER, cell));
            return;
        }
        double shown = Double.parseDouble(cell.replace(',', '.'));
        readings.add(new RecordReadings.Numbered(
                readings.size(),
                new HouseReading(
                        series.house(),
                        series.quantity(),
                        series.sensor(),
                        at,
                        series.conversion().kept(shown),
                        shown,
                        series.unit().ucum())));
        places.add(new Place(line, header));
        spans.merge(series.site(), new Span(series.zone(), at, at), Span::with);
    }

    /** The moment of one line by each of the clocks that its cells go by; what there is to say of it is said once. */
    private final class Moments {
        private final long line;
        private final String name;
        private final TimeForm.Written written;
        private final Map<ZoneId, Optional<Instant>> known = new HashMap<>();

        Moments(long line, String name, TimeForm.Written written) {
            this.line = line;
            this.name = name;
            this.written = written;
        }

        @Nullable
        Instant of(ZoneId zone) {
            return known.computeIfAbsent(zone, this::read).orElse(null);
        }

        /** Lines of one name follow each other in time; those of another may begin again from the first day. */
        private Optional<Instant> read(ZoneId zone) {
            String column = plan.times().column();
            try {
                LocalTimes.Read read = clocks.computeIfAbsent(new Clock(name, zone), any -> new LocalTimes(zone))
                        .read(written);
                if (read.note() != null) {
                    String kind = written.said() == null ? "clock-change" : "offset";
                    remarks.add(new CsvReport.Line(line, column, "noted", kind, read.note()));
                }
                return Optional.of(read.at());
            } catch (LocalTimes.NoSuchTime none) {
                refuse(line, column, none.why());
                return Optional.empty();
            }
        }
    }

    private void refuse(long line, @Nullable String column, Saying why) {
        remarks.add(new CsvReport.Line(line, column, "refused", "unreadable", why));
    }

    List<RecordReadings.Numbered> readings() {
        return readings;
    }

    /** By site. */
    Map<String, Span> spans() {
        return spans;
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

    static String key(rootcast.app.climate.HouseQuantity of, String sensor, Instant at) {
        return of.house() + '|' + of.quantity() + '|' + sensor + '|' + at;
    }
}
