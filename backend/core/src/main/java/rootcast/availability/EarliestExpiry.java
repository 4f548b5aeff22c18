package rootcast.availability;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Places kept trays on batches: date by date, each from the usable lot whose last date comes first.
 *
 * <p>Every promise draws on its lots as they count at its own confidence. With one confidence that places every kept
 * tray. With several it may leave some, because promises that hold in different worlds need not hold from one fixed choice
 * of batches; then all are placed on the lots as they count at the lowest confidence, where they do fit.
 *
 * <p>Source: F. Glover, Maximum matching in a convex bipartite graph, Naval Research Logistics Quarterly 14 (1967).
 */
final class EarliestExpiry {

    private final List<Promise> promises;
    private final int[] dueOn;
    private final LotOdds odds;

    private EarliestExpiry(List<Promise> promises, int[] dueOn, LotOdds odds) {
        this.promises = promises;
        this.dueOn = dueOn;
        this.odds = odds;
    }

    /**
     * @param dueOn date number per promise
     * @param kept  trays to place per promise; they fit at every confidence
     */
    static List<List<Share>> place(List<Promise> promises, int[] dueOn, int[] kept, LotOdds odds) {
        var rule = new EarliestExpiry(promises, dueOn, odds);
        List<List<Share>> own = rule.placeAtMost(1, kept);
        if (placed(own) == wanted(kept)) {
            return own;
        }
        double lowest = promises.stream().mapToDouble(Promise::confidence).min().orElse(1);
        return rule.placeAtMost(lowest, kept);
    }

    /** Each promise draws at its own confidence, or at {@code confidence} where that is lower. */
    private List<List<Share>> placeAtMost(double confidence, int[] kept) {
        List<List<Share>> shares = new ArrayList<>();
        promises.forEach(promise -> shares.add(new ArrayList<>()));
        List<LotTakings> takings = new ArrayList<>();
        odds.lots.forEach(lot -> takings.add(new LotTakings()));
        for (int i : promisesByDate()) {
            int left = kept[i];
            double counted = Math.min(confidence, promises.get(i).confidence());
            for (int lot = 0; lot < takings.size(); lot++) {
                int offered = odds.traysAt(lot, dueOn[i], counted);
                int trays = Math.min(left, takings.get(lot).free(offered));
                if (trays > 0) {
                    takings.get(lot).take(offered, trays);
                    shares.get(i).add(new Share(odds.lots.get(lot).batch(), trays));
                    left -= trays;
                }
            }
        }
        return shares;
    }

    private List<Integer> promisesByDate() {
        List<Integer> order = new ArrayList<>(dueOn.length);
        for (int i = 0; i < dueOn.length; i++) {
            order.add(i);
        }
        order.sort(Comparator.<Integer>comparingInt(i -> dueOn[i]).thenComparing(promises::get, Allotment.SENIORITY));
        return order;
    }

    private static long placed(List<List<Share>> shares) {
        return shares.stream().flatMap(List::stream).mapToLong(Share::trays).sum();
    }

    private static long wanted(int[] kept) {
        long sum = 0;
        for (int trays : kept) {
            sum += trays;
        }
        return sum;
    }

    /**
     * What was taken of one lot. A lot's trays are nested: what counts at a date and confidence is its first n trays.
     * Takings fit exactly if, for every n, those limited to the first n trays or fewer come to at most n.
     */
    private static final class LotTakings {

        private final List<int[]> limitAndTrays = new ArrayList<>();

        int free(int limit) {
            int free = limit - takenWithin(limit);
            for (int[] taking : limitAndTrays) {
                if (taking[0] > limit) {
                    free = Math.min(free, taking[0] - takenWithin(taking[0]));
                }
            }
            return free;
        }

        void take(int limit, int trays) {
            limitAndTrays.add(new int[] {limit, trays});
        }

        private int takenWithin(int limit) {
            int sum = 0;
            for (int[] taking : limitAndTrays) {
                sum += taking[0] <= limit ? taking[1] : 0;
            }
            return sum;
        }
    }
}
