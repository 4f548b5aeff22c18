package rootcast.availability;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;

/**
 * Which promises of a cell are kept, in part or whole, and which batch serves them.
 *
 * <p>Who keeps: promises are taken in by {@link #SENIORITY}, the more certain first, then the older; each keeps as many
 * trays as fit beside those taken in before it. So a later promise never costs an older one of its confidence a tray, and
 * among promises of one confidence as many trays are kept as any choice could keep (the sets of trays that can be kept
 * form a transversal matroid: Edmonds and Fulkerson 1965).
 *
 * <p>Which batch: see {@link EarliestExpiry}.
 *
 * @param promises one for each promise of the supply, in its order
 */
public record Allotment(List<KeptPromise> promises) {

    /** The order in which promises are served where not all can be. Order id and line only break ties. */
    static final Comparator<Promise> SENIORITY = Comparator.comparingDouble(Promise::confidence)
            .reversed()
            .thenComparingLong(Promise::position)
            .thenComparing(Promise::order)
            .thenComparingInt(Promise::line);

    public Allotment {
        promises = List.copyOf(promises);
    }

    public static Allotment of(CellSupply supply) {
        List<Promise> promises = supply.promises();
        int[] kept = keptTrays(supply);
        List<List<Share>> shares = EarliestExpiry.place(supply, kept);
        List<KeptPromise> all = new ArrayList<>(kept.length);
        for (int i = 0; i < kept.length; i++) {
            all.add(new KeptPromise(promises.get(i), kept[i], shares.get(i)));
        }
        return new Allotment(all);
    }

    /** Numbers of the promises in the order in which they are served where not all can be. */
    static int[] bySeniority(List<Promise> promises) {
        return IntStream.range(0, promises.size())
                .boxed()
                .sorted(Comparator.comparing(promises::get, SENIORITY))
                .mapToInt(Integer::intValue)
                .toArray();
    }

    /** Date number of each promise. */
    static int[] dueOn(CellSupply supply, ListedDates dates) {
        int[] dueOn = new int[supply.promises().size()];
        for (int i = 0; i < dueOn.length; i++) {
            dueOn[i] = dates.numberOf(supply.promises().get(i).dueOn(supply.today()));
        }
        return dueOn;
    }

    public long keptTrays() {
        return promises.stream().mapToLong(KeptPromise::keptTrays).sum();
    }

    /**
     * Kept trays per promise, in the order of the supply, without asking which batch serves them. Only the level of the
     * promise itself can bind: every promise taken in before it is at least as certain.
     */
    static int[] keptTrays(CellSupply supply) {
        List<Promise> promises = supply.promises();
        ListedDates dates = ListedDates.of(promises, List.of(), supply.today());
        int[] dueOn = dueOn(supply, dates);
        int[] kept = new int[dueOn.length];
        long[] taken = new long[dates.count() + 2];
        LotsAtConfidence lots = null;
        for (int i : bySeniority(promises)) {
            Promise promise = promises.get(i);
            if (lots == null || promise.confidence() != lots.confidence) {
                lots = new LotsAtConfidence(supply.lots(), dates, promise.confidence());
            }
            long slack = new LeastSlack(lots, taken).at(dueOn[i]);
            kept[i] = (int) Math.min(promise.trays(), Math.max(0, slack));
            taken[dueOn[i]] += kept[i];
        }
        return kept;
    }
}
