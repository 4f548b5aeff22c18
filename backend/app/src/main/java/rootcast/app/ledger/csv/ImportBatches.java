package rootcast.app.ledger.csv;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.time.LocalTime;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.ledger.Plausible;
import rootcast.app.ledger.RecordEntry;
import rootcast.app.ledger.StickBatch;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.once.FactHead;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.once.SetupLog;
import rootcast.app.people.Caller;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.RefusalTable;
import rootcast.app.site.store.Places;
import rootcast.app.table.TextTable;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variety;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.Entry;
import rootcast.ledger.EntryRules;
import rootcast.ledger.What;
import rootcast.saying.Fault;
import rootcast.site.House;
import rootcast.site.Site;

/**
 * Sticks the batches of a table, each with the stage it has reached and the plants that are alive, through the entries
 * that people make by hand. A line that cannot be taken is left out with its reason; one that says what is recorded
 * already is not written again, so a corrected table can be imported as a whole.
 */
@ApplicationScoped
public class ImportBatches {

    /** Nobody else writes while a table is tried or taken, and each line is held against its outlook. */
    private static final int MOST_LINES = 500;

    /** A table gives days; the middle of the working day is never far from when it was. */
    private static final LocalTime NOON = LocalTime.NOON;

    @Inject
    Once once;

    @Inject
    StickBatch stickBatch;

    @Inject
    RecordEntry recordEntry;

    @Inject
    Plausible plausible;

    @Inject
    PanacheLedger ledger;

    @Inject
    Places places;

    @Inject
    Catalogue catalogue;

    @Inject
    FactHead head;

    @Inject
    SetupLog log;

    @Inject
    Rights rights;

    @Inject
    Caller caller;

    @Inject
    InstantSource time;

    public BatchCsvReport preview(String text, BatchCsvPlan plan) {
        List<TextTable.Line> lines = read(text, plan);
        return once.tried("preview of a table of batches", () -> new Import(plan).of(lines, true));
    }

    public Once.Answer take(OnceKey key, Object request, String text, BatchCsvPlan plan) {
        List<TextTable.Line> lines = read(text, plan);
        return once.writeBulk(key, "POST /api/batches/csv", request, 200, () -> new Import(plan).of(lines, false));
    }

    private static List<TextTable.Line> read(String text, BatchCsvPlan plan) {
        List<TextTable.Line> lines = new ArrayList<>();
        TextTable.read(text, plan.separator(), plan.columns().named(), lines::add);
        if (lines.size() > MOST_LINES) {
            throw Problem.malformed("csv", Fault.TOO_MANY, MOST_LINES);
        }
        return lines;
    }

    /** What tells two batches apart where no label does. */
    private record Told(String site, String house, String variety, String format, LocalDate stuckOn, int trays) {}

    /** One table on its way into the ledger; inside one transaction. */
    private final class Import {

        private final BatchCsvPlan plan;
        private final NamedThings named;
        private final Instant now = time.instant();
        private final List<Site> sites = places.sites();
        /** What was recorded before this table, by variety. */
        private final Map<String, Set<Told>> before = new HashMap<>();

        private final List<BatchCsvReport.Line> said = new ArrayList<>();
        private int batches;
        private int plants;

        Import(BatchCsvPlan plan) {
            this.plan = plan;
            this.named = new NamedThings(places, catalogue, head, log, rights, plan);
        }

        private boolean isHere(Told told) {
            return before.computeIfAbsent(
                            told.variety(),
                            variety -> ledger.foldsOf(List.of(variety)).stream()
                                    .map(this::toldOf)
                                    .collect(Collectors.toSet()))
                    .contains(told);
        }

        private Told toldOf(BatchFold fold) {
            Batch batch = fold.state().batch();
            Site site = sites.stream()
                    .filter(each -> each.code().equals(batch.site()))
                    .findFirst()
                    .orElseThrow();
            What.Stick stick = (What.Stick) fold.steps().get(0).entry().what();
            return new Told(
                    site.code(),
                    stick.house(),
                    batch.variety(),
                    batch.trayFormat().code(),
                    site.dayOf(batch.stuckAt()),
                    stick.trays());
        }

        BatchCsvReport of(List<TextTable.Line> lines, boolean dryRun) {
            for (TextTable.Line line : lines) {
                try {
                    take(BatchLine.read(line, plan));
                } catch (LineRefused refused) {
                    said.add(BatchCsvReport.Line.of(refused, line.number()));
                }
            }
            return new BatchCsvReport(
                    dryRun,
                    lines.size(),
                    batches,
                    plants,
                    outcomes("here"),
                    outcomes("refused"),
                    outcomes("doubtful"),
                    named.made(),
                    List.copyOf(said));
        }

        private int outcomes(String outcome) {
            return Math.toIntExact(said.stream()
                    .filter(line -> line.outcome().equals(outcome))
                    .map(BatchCsvReport.Line::line)
                    .distinct()
                    .count());
        }

        private void take(BatchLine line) {
            Site site = named.site(line);
            rights.at(site.code(), Right.RECORD);
            TrayFormat format = named.format(line);
            Instant stuckAt = on(line.stuckOn(), site);
            Optional<Problem> refusal = whyNot(line, format, site, stuckAt);
            if (refusal.isPresent()) {
                said.add(BatchCsvReport.Line.of(refusal.get(), line.number(), "refused"));
                return;
            }
            House house = named.house(line, site);
            Variety variety = named.variety(line);
            Told told =
                    new Told(site.code(), house.code(), variety.code(), format.code(), line.stuckOn(), line.trays());
            if (isHere(told)) {
                said.add(BatchCsvReport.Line.said(
                        line.number(), null, "here", "here-already", "the same batch is recorded already"));
                return;
            }
            write(line, site, house, variety, format, stuckAt);
        }

        private void write(
                BatchLine line, Site site, House house, Variety variety, TrayFormat format, Instant stuckAt) {
            String by = caller.who().name();
            RecordEntry.Recorded last = stickBatch.stick(
                    new StickBatch.Wanted(
                            site.code(),
                            house.code(),
                            variety.code(),
                            format.code(),
                            stuckAt,
                            line.trays(),
                            null,
                            line.lot().isEmpty() ? null : plan.columns().lot() + ": " + line.lot()),
                    by,
                    now);
            Batch batch = last.after().batch();
            Set<UUID> written = new HashSet<>();
            for (Happened each : after(line, site)) {
                last = recordEntry.record(batch.id(), each.at(), each.what(), null, by, now);
                written.add(last.id());
            }
            batches++;
            plants += last.after().alivePlants();
            plausible
                    .doubtOf(batch, written)
                    .ifPresent(doubt -> said.add(BatchCsvReport.Line.of(doubt, line.number(), "doubtful")));
            if (line.stage() != null && line.reachedOn() == null) {
                said.add(BatchCsvReport.Line.said(
                        line.number(),
                        plan.columns().stage(),
                        "noted",
                        "stage-today",
                        "says no day for the stage: it counts as seen now"));
            }
        }

        /** The rules are asked before anything is written, so that a line is taken whole or not at all. */
        private Optional<Problem> whyNot(BatchLine line, TrayFormat format, Site site, Instant stuckAt) {
            Batch batch = new Batch("a line", site.code(), line.variety(), format, stuckAt);
            List<Happened> all = new ArrayList<>();
            all.add(new Happened(stuckAt, new What.Stick(line.house(), line.trays(), line.trays() * format.cells())));
            all.addAll(after(line, site));
            List<Entry> earlier = new ArrayList<>();
            for (Happened each : all) {
                Entry entry = new Entry(
                        UUID.randomUUID(),
                        new FactPosition(earlier.size() + 1L),
                        batch.id(),
                        each.at(),
                        now,
                        "",
                        each.what(),
                        null);
                if (EntryRules.decide(batch, earlier, entry, now) instanceof EntryRules.Decision.Refused refused) {
                    return Optional.of(RefusalTable.problemOf(refused.because()));
                }
                earlier.add(entry);
            }
            return StickBatch.tooLongAgo(stuckAt, now);
        }

        private record Happened(Instant at, What what) {}

        /** What the line says of the batch after its sticking. */
        private List<Happened> after(BatchLine line, Site site) {
            List<Happened> after = new ArrayList<>();
            if (line.stage() != null) {
                after.add(new Happened(
                        line.reachedOn() == null ? now : on(line.reachedOn(), site),
                        new What.StageReached(line.stage())));
            }
            if (line.alive() != null) {
                after.add(new Happened(now, new What.Count(line.alive())));
            }
            return after;
        }

        /** Today's noon may be still to come. */
        private Instant on(LocalDate day, Site site) {
            Instant noon = day.atTime(NOON).atZone(site.zone()).toInstant();
            return noon.isAfter(now) && day.equals(site.dayOf(now)) ? now : noon;
        }
    }
}
