package rootcast.ledger;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * A batch's entries replayed in the order they happened; the one authority on what they add up to.
 *
 * <p>Order is by {@code happenedAt}, then by position. Reversed entries and reversals take no part. A count sets the
 * living plants at its moment, so a loss recorded late but before a count explains plants that the count had already
 * missed, and changes nothing after it.
 */
public final class BatchFold {

    private static final Comparator<Entry> AS_IT_HAPPENED =
            Comparator.comparing(Entry::happenedAt).thenComparing(Entry::position);

    private final Batch batch;
    private final List<Step> steps;
    private final @Nullable Impossible impossible;

    /**
     * One entry and what it did.
     *
     * @param postings sum to zero
     * @param after    the batch right after it
     */
    public record Step(Entry entry, List<Posting> postings, BatchState after) {}

    /** The first entry that cannot have happened, and why. */
    public record Impossible(Entry entry, Refusal because) {}

    private BatchFold(Batch batch, List<Step> steps, @Nullable Impossible impossible) {
        this.batch = batch;
        this.steps = List.copyOf(steps);
        this.impossible = impossible;
    }

    /**
     * @param entries entries of {@code batch} in any order; the batch's {@code stick} is among them
     */
    public static BatchFold of(Batch batch, List<Entry> entries) {
        List<Step> steps = new ArrayList<>();
        BatchState state = BatchState.beforeSticking(batch);
        for (Entry entry : inForce(entries)) {
            Optional<Refusal> refusal = EntryRules.whyImpossible(state, entry);
            if (refusal.isPresent()) {
                return new BatchFold(batch, steps, new Impossible(entry, refusal.get()));
            }
            BatchState after = state.after(entry);
            steps.add(new Step(entry, postings(state, after, entry.happenedAt()), after));
            state = after;
        }
        return new BatchFold(batch, steps, null);
    }

    /** Entries that count, as they happened. */
    private static List<Entry> inForce(List<Entry> entries) {
        Set<UUID> reversed = new HashSet<>();
        for (Entry entry : entries) {
            if (entry.what() instanceof What.Reversal reversal) {
                reversed.add(reversal.entry());
            }
        }
        return entries.stream()
                .filter(entry -> !(entry.what() instanceof What.Reversal) && !reversed.contains(entry.id()))
                .sorted(AS_IT_HAPPENED)
                .toList();
    }

    /** What moved between two states; empty where nothing did. */
    private static List<Posting> postings(BatchState before, BatchState after, Instant at) {
        Map<Account, Long> change = new LinkedHashMap<>();
        before.balances().forEach((account, plants) -> change.merge(account, -plants, Long::sum));
        after.balances().forEach((account, plants) -> change.merge(account, plants, Long::sum));
        return change.entrySet().stream()
                .filter(moved -> moved.getValue() != 0)
                .map(moved -> new Posting(moved.getKey(), moved.getValue(), at))
                .toList();
    }

    /**
     * The postings that turn the books of {@code before} into these: what an entry posts when it joins late, or a
     * reversal when it takes an entry out. They sum to zero at every instant.
     */
    public List<Posting> postingsSince(BatchFold before) {
        record Place(Account account, Instant at) {}
        Map<Place, Long> change = new LinkedHashMap<>();
        steps.forEach(step -> step.postings()
                .forEach(p -> change.merge(new Place(p.account(), p.effectiveAt()), p.plants(), Long::sum)));
        before.steps.forEach(step -> step.postings()
                .forEach(p -> change.merge(new Place(p.account(), p.effectiveAt()), -p.plants(), Long::sum)));
        return change.entrySet().stream()
                .filter(moved -> moved.getValue() != 0)
                .map(moved -> new Posting(
                        moved.getKey().account(),
                        moved.getValue(),
                        moved.getKey().at()))
                .toList();
    }

    public List<Step> steps() {
        return steps;
    }

    public Optional<Impossible> impossible() {
        return Optional.ofNullable(impossible);
    }

    /** The batch after its last entry; not stuck if its sticking was reversed. */
    public BatchState state() {
        return steps.isEmpty()
                ? BatchState.beforeSticking(batch)
                : steps.get(steps.size() - 1).after();
    }

    /** The batch right after {@code instant}; empty if it was not stuck by then. */
    public Optional<BatchState> stateAt(Instant instant) {
        BatchState found = null;
        for (Step step : steps) {
            if (step.entry().happenedAt().isAfter(instant)) {
                break;
            }
            found = step.after();
        }
        return Optional.ofNullable(found);
    }

    /** Balance of every account that the postings add up to; for audit against {@link BatchState#balances()}. */
    public static Map<Account, Long> balances(Iterable<Posting> postings) {
        Map<Account, Long> sum = new HashMap<>();
        postings.forEach(posting -> sum.merge(posting.account(), posting.plants(), Long::sum));
        sum.values().removeIf(plants -> plants == 0);
        return sum;
    }
}
