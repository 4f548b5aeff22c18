package rootcast.ledger;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import rootcast.facts.FactPosition;
import rootcast.ledger.EntryRules.Decision;

/** The ledger without a database: the rules decide, what they accept is kept. The n-th entry written has the id {@link #id}. */
public final class InMemoryLedger implements Ledger {

    private final Map<String, Batch> batches = new LinkedHashMap<>();
    private final Map<String, List<Entry>> entries = new LinkedHashMap<>();
    private final Map<UUID, List<Posting>> postings = new LinkedHashMap<>();
    private long lastPosition;

    public static UUID id(long position) {
        return new UUID(0, position);
    }

    /** Writes the entry if the rules allow it. */
    public Decision record(Batch batch, Instant happenedAt, What what, Instant now) {
        var position = new FactPosition(lastPosition + 1);
        var entry = new Entry(id(position.value()), position, batch.id(), happenedAt, now, "ada", what, null);
        Decision decision = EntryRules.decide(batch, entriesOf(batch.id()), entry, now);
        if (decision instanceof Decision.Accepted accepted) {
            if (what instanceof What.Stick) {
                open(batch);
            }
            append(entry, accepted.postings());
        }
        return decision;
    }

    public BatchState state(Batch batch) {
        return BatchFold.of(batch, entriesOf(batch.id())).state();
    }

    public List<Posting> postingsOf(UUID entry) {
        return postings.get(entry);
    }

    @Override
    public Optional<Batch> batch(String id) {
        return Optional.ofNullable(batches.get(id));
    }

    @Override
    public List<Entry> entriesOf(String batch) {
        return List.copyOf(entries.getOrDefault(batch, List.of()));
    }

    @Override
    public void open(Batch batch) {
        batches.put(batch.id(), batch);
        entries.put(batch.id(), new ArrayList<>());
    }

    @Override
    public void append(Entry entry, List<Posting> postings) {
        lastPosition = entry.position().value();
        entries.get(entry.batch()).add(entry);
        this.postings.put(entry.id(), postings);
    }
}
