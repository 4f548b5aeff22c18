package rootcast.app.ledger;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.once.FactHead;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.RefusalTable;
import rootcast.app.problem.Thing;
import rootcast.app.site.store.Places;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchState;
import rootcast.ledger.Entry;
import rootcast.ledger.EntryRules;
import rootcast.ledger.What;
import rootcast.saying.Fault;
import rootcast.site.House;

/** Writes what happened to a batch, if the core's rules allow it. */
@ApplicationScoped
public class RecordEntry {

    @Inject
    Rights rights;

    @Inject
    PanacheLedger ledger;

    @Inject
    Places places;

    @Inject
    ShipFor shipFor;

    @Inject
    FactHead head;

    /** The written entry and where it left the batch. */
    public record Recorded(UUID id, FactPosition position, BatchState after) {}

    /** To be called inside {@link rootcast.app.once.Once}. */
    public Recorded record(
            String batchId, Instant happenedAt, What what, @Nullable String note, String by, Instant recordedAt) {
        Batch batch = ledger.batch(batchId).orElseThrow(() -> Problem.notFound(Thing.BATCH, batchId));
        rights.at(batch.site(), Right.RECORD);
        if (what instanceof What.Move move) {
            staysOnSite(batch, move);
        }
        if (what instanceof What.Ship ship) {
            shipFor.check(batch, ship);
        }
        Entry entry = new Entry(
                UUID.randomUUID(),
                head.next(),
                batchId,
                happenedAt.truncatedTo(ChronoUnit.MICROS),
                recordedAt,
                by,
                what,
                note);
        return write(batch, ledger.entriesOf(batchId), entry, false);
    }

    Recorded write(Batch batch, List<Entry> recorded, Entry entry, boolean isNew) {
        EntryRules.Decision decision = EntryRules.decide(batch, recorded, entry, entry.recordedAt());
        if (decision instanceof EntryRules.Decision.Refused refused) {
            throw RefusalTable.problemOf(refused.because());
        }
        EntryRules.Decision.Accepted accepted = (EntryRules.Decision.Accepted) decision;
        if (isNew) {
            ledger.open(batch);
        }
        ledger.append(entry, accepted.postings());
        return new Recorded(entry.id(), entry.position(), accepted.books().state());
    }

    private void staysOnSite(Batch batch, What.Move move) {
        House house = places.house(move.house()).orElseThrow(() -> Problem.unknownCode("house", move.house()));
        if (!house.site().equals(batch.site())) {
            throw Problem.notAllowed("house", house.code(), Fault.OTHER_SITE, house.site(), batch.site());
        }
    }
}
