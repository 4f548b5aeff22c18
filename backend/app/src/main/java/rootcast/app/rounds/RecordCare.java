package rootcast.app.rounds;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import rootcast.app.ledger.Plausible;
import rootcast.app.ledger.RecordEntry;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;
import rootcast.app.problem.RefusalTable;
import rootcast.app.problem.Thing;
import rootcast.app.rounds.store.RoundCares;
import rootcast.app.site.store.Places;
import rootcast.crop.Stage;
import rootcast.ledger.Batch;
import rootcast.ledger.What;
import rootcast.rounds.Care;
import rootcast.rounds.RoundItem;
import rootcast.rounds.Task;
import rootcast.rounds.Treatment;
import rootcast.site.House;
import rootcast.site.Site;

/** Closes a round item, and writes the entry that doing it brings about. To be called inside {@link rootcast.app.once.Once}. */
@ApplicationScoped
public class RecordCare {

    /** What is due within a week may be done today. */
    private static final int DAYS_AHEAD = 7;

    @Inject
    Rights rights;

    @Inject
    SiteCare siteCare;

    @Inject
    RoundCares cares;

    @Inject
    PanacheLedger ledger;

    @Inject
    Places places;

    @Inject
    RecordEntry recordEntry;

    @Inject
    Plausible plausible;

    /** @param asks whether whoever did it can be asked about what is hardly likely */
    public RecordedCare done(String item, Instant happenedAt, Observed observed, boolean asks, String by, Instant now) {
        Found found = find(item, now);
        mayHappen(found, happenedAt, now);
        if (found.item().task() == Task.MOVE) {
            mustBeOpen(found, observed.house(), happenedAt);
        }
        List<UUID> entries = new ArrayList<>();
        for (What what : entriesOf(found.item(), observed)) {
            entries.add(recordEntry
                    .record(found.item().batch(), happenedAt, what, observed.note(), by, now)
                    .id());
        }
        if (asks && !entries.isEmpty()) {
            plausible.ask(ledger.batch(found.item().batch()).orElseThrow(), Set.copyOf(entries));
        }
        return write(found, true, happenedAt, null, observed, entries, by, now);
    }

    public RecordedCare skipped(String item, Instant happenedAt, String reason, String by, Instant now) {
        Found found = find(item, now);
        if (happenedAt.isAfter(now)) {
            throw RefusalTable.inTheFuture(happenedAt, now);
        }
        return write(found, false, happenedAt, reason, Observed.NOTHING, List.of(), by, now);
    }

    /** Reverses what it wrote; the item is due again. */
    public RecordedCare undo(String item, String reason, String by, Instant now) {
        RecordedCare before = cares.ofItem(item).orElseThrow(() -> Problem.notFound(Thing.CLOSED_ROUND_ITEM, item));
        rights.at(before.site(), Right.RECORD);
        cares.takeBack(before.id(), now, by, reason);
        for (UUID entry : before.entries()) {
            recordEntry.record(before.care().batch(), now, new What.Reversal(entry, reason), null, by, now);
        }
        return before;
    }

    private RecordedCare write(
            Found found,
            boolean done,
            Instant happenedAt,
            @Nullable String reason,
            Observed observed,
            List<UUID> entries,
            String by,
            Instant now) {
        RoundItem item = found.item();
        RecordedCare care = new RecordedCare(
                UUID.randomUUID(),
                found.at().site().code(),
                new Care(
                        item.id(),
                        item.task(),
                        item.house(),
                        item.batch(),
                        item.dueOn(),
                        done,
                        happenedAt.truncatedTo(ChronoUnit.MICROS),
                        observed.level(),
                        observed.ecMsPerCm()),
                now,
                by,
                reason,
                observed.note(),
                observed.pests(),
                observed.nitrogenPpm(),
                observed.arrival(),
                entries);
        cares.add(care);
        return care;
    }

    private record Found(RoundItem item, SiteCare.At at) {}

    private Found find(String id, Instant now) {
        cares.ofItem(id).ifPresent(before -> {
            rights.at(before.site(), Right.RECORD);
            throw new Problem(
                            ProblemType.ALREADY_CLOSED,
                            "The item was %s at %s. Undo that first if it was wrong."
                                    .formatted(
                                            before.care().done() ? "done" : "skipped",
                                            before.care().at()))
                    .with("asked", id)
                    .with("closedAt", before.care().at());
        });
        Site site = siteOf(id).orElseThrow(() -> Problem.notFound(Thing.ROUND_ITEM, id));
        rights.at(site.code(), Right.RECORD);
        SiteCare.At at = siteCare.at(site, now);
        LocalDate today = site.dayOf(now);
        for (int ahead = 0; ahead <= DAYS_AHEAD; ahead++) {
            for (RoundItem item : siteCare.round(at, today.plusDays(ahead))) {
                if (item.id().equals(id)) {
                    return new Found(item, at);
                }
            }
        }
        throw Problem.notFound(Thing.ROUND_ITEM, id);
    }

    /** An id is task, then batch or house, then the occurrence, parted by dots; codes may hold dots themselves. */
    private Optional<Site> siteOf(String id) {
        int dot = id.indexOf('.');
        if (dot < 0 || Task.ofWireName(id.substring(0, dot)).isEmpty()) {
            return Optional.empty();
        }
        String rest = id.substring(dot + 1) + ".";
        Optional<String> site = IntStream.range(1, rest.length())
                .filter(at -> rest.charAt(at) == '.')
                .mapToObj(at -> ledger.batch(rest.substring(0, at)))
                .flatMap(Optional::stream)
                .map(Batch::site)
                .findFirst();
        return site.or(() -> places.houses().stream()
                        .filter(house -> rest.startsWith(house.code() + "."))
                        .map(House::site)
                        .findFirst())
                .flatMap(places::site);
    }

    private static void mayHappen(Found found, Instant happenedAt, Instant now) {
        if (happenedAt.isAfter(now)) {
            throw RefusalTable.inTheFuture(happenedAt, now);
        }
        mustBeOpen(found, found.item().house(), happenedAt);
    }

    private static void mustBeOpen(Found found, String house, Instant happenedAt) {
        Treatment.closing(found.at().treatments(), house, happenedAt).ifPresent(closing -> {
            throw new Problem(
                            ProblemType.HOUSE_CLOSED,
                            "House '%s' was treated with %s; it may be entered again from %s. The label and local law decide."
                                    .formatted(house, closing.product(), closing.reentryAt()))
                    .with("house", house)
                    .with("product", closing.product())
                    .with("until", closing.reentryAt());
        });
    }

    private static List<What> entriesOf(RoundItem item, Observed observed) {
        return switch (item.task()) {
            case LOOK_CALLUS -> look(Stage.CALLUS, observed);
            case LOOK_ROOT -> look(Stage.ROOT, observed);
            case READY -> look(Stage.READY, observed);
            case COUNT ->
                List.of(
                        observed.sample() == null
                                ? new What.Count(observed.plants())
                                : new What.SampledCount(observed.sample()));
            case MOVE -> List.of(new What.Move(observed.house()));
            default -> List.of();
        };
    }

    private static List<What> look(Stage stage, Observed observed) {
        What look = new What.Look(stage, observed.cells(), observed.reached());
        return Boolean.TRUE.equals(observed.stageReached())
                ? List.of(look, new What.StageReached(stage))
                : List.of(look);
    }
}
