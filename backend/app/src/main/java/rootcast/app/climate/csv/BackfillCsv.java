package rootcast.app.climate.csv;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import rootcast.app.climate.FlagOfHouse;
import rootcast.app.climate.IngestCount;
import rootcast.app.climate.RecordReadings;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.climate.FlagWords;

/**
 * Takes the readings of a table. The preview does the whole work and takes it back, so that it cannot promise anything
 * else than what then happens.
 */
@ApplicationScoped
public class BackfillCsv {

    private static final int MOST_LINES = 500;

    @Inject
    Once once;

    @Inject
    RecordReadings recordReadings;

    @Inject
    IngestCount count;

    @Inject
    InstantSource time;

    @Inject
    Rights rights;

    public CsvReport preview(String text, CsvPlan plan) {
        CsvTable table = allowed(text, plan);
        return once.tried(
                "preview of a table",
                () -> report(table, recordReadings.backfill(table.readings(), time.instant()), true));
    }

    public Once.Answer take(OnceKey key, Object request, String text, CsvPlan plan) {
        CsvTable table = allowed(text, plan);
        Instant now = time.instant();
        return once.writeBulk(key, "POST /api/readings/csv", request, 200, () -> {
            RecordReadings.Recorded recorded = recordReadings.backfill(table.readings(), now);
            count.taken(
                    IngestCount.CSV,
                    table.readings().size(),
                    recorded,
                    number -> "line " + table.place(number).line(),
                    now);
            return report(table, recorded, false);
        });
    }

    /** A table may name houses line by line: which sites it is of is known once it was read. */
    private CsvTable allowed(String text, CsvPlan plan) {
        CsvTable table = CsvTable.read(text, plan);
        table.spans().keySet().forEach(site -> rights.at(site, Right.SET_UP));
        return table;
    }

    private static CsvReport report(CsvTable table, RecordReadings.Recorded recorded, boolean dryRun) {
        List<CsvReport.Line> lines = new ArrayList<>(table.remarks());
        long unreadable =
                lines.stream().filter(line -> line.outcome().equals("refused")).count();
        for (RecordReadings.Refused refused : recorded.refused()) {
            CsvTable.Place place = table.place(refused.index());
            lines.add(new CsvReport.Line(
                    place.line(),
                    place.column(),
                    refused.flag() == null ? "refused" : "set-aside",
                    refused.flag(),
                    refused.why()));
        }
        Map<String, CsvTable.Place> places = table.byMoment();
        for (FlagOfHouse each : recorded.flagged()) {
            CsvTable.Place place = places.get(
                    CsvTable.key(each.of(), each.flag().sensor(), each.flag().at()));
            lines.add(new CsvReport.Line(
                    place == null ? 0 : place.line(),
                    place == null ? null : place.column(),
                    "flagged",
                    each.flag().kind().wireName(),
                    FlagWords.remark(each.of().quantity(), each.flag())));
        }
        lines.sort(Comparator.comparing((CsvReport.Line line) -> line.outcome().equals("noted")));
        List<CsvReport.Line> first = new ArrayList<>(lines.subList(0, Math.min(MOST_LINES, lines.size())));
        first.sort(Comparator.comparingLong(CsvReport.Line::line));
        return new CsvReport(
                dryRun,
                table.rows(),
                table.readings().size(),
                recorded.accepted(),
                recorded.duplicates(),
                Math.toIntExact(unreadable) + recorded.refused().size(),
                recorded.flagged().size(),
                table.spans().entrySet().stream()
                        .map(each -> new CsvReport.Span(
                                each.getKey(),
                                each.getValue().zone().getId(),
                                each.getValue().first(),
                                each.getValue().last()))
                        .toList(),
                List.copyOf(first),
                lines.size() > MOST_LINES);
    }
}
