package rootcast.availability;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Places kept trays on batches: date by date, each on the usable tray whose window ends first.
 *
 * <p>Of one lot that is always the last of the trays it offers on the date that are still free: it is the least sure of them,
 * and its window lies within those of the others. Every promise draws on its lots as they count at its own confidence.
 * With one confidence that places every kept tray. With several it may leave some, because promises that hold in
 * different worlds need not hold from one fixed choice of batches; then all are placed on the lots as they count at the
 * lowest confidence, where they do fit.
 *
 * <p>Source: F. Glover, Maximum matching in a convex bipartite graph, Naval Research Logistics Quarterly 14 (1967).
 */
final class EarliestExpiry {

    private final List<Promise> promises;
    private final LocalDate today;
    private final List<SupplyLot> lots;

    /** Those that end together by batch, so that the order they came in decides nothing. */
    private EarliestExpiry(CellSupply supply) {
        this.promises = supply.promises();
        this.today = supply.today();
        this.lots = supply.lots().stream()
                .sorted(Comparator.comparing(SupplyLot::batch))
                .toList();
    }

    /**
     * @param kept trays to place per promise; they fit at every confidence
     */
    static List<List<Share>> place(CellSupply supply, int[] kept) {
        var rule = new EarliestExpiry(supply);
        List<List<Share>> own = rule.placeAtMost(1, kept);
        if (placed(own) == wanted(kept)) {
            return own;
        }
        double lowest =
                rule.promises.stream().mapToDouble(Promise::confidence).min().orElse(1);
        return rule.placeAtMost(lowest, kept);
    }

    /** Each promise draws at its own confidence, or at {@code confidence} where that is lower. */
    private List<List<Share>> placeAtMost(double confidence, int[] kept) {
        List<List<Share>> shares = new ArrayList<>();
        promises.forEach(promise -> shares.add(List.of()));
        List<Takings> takings = lots.stream().map(Takings::new).toList();
        for (int i : promisesByDate()) {
            Promise promise = promises.get(i);
            double counted = Math.min(confidence, promise.confidence());
            shares.set(i, serve(kept[i], promise.dueOn(today), counted, takings));
        }
        return shares;
    }

    private static List<Share> serve(int trays, LocalDate date, double confidence, List<Takings> takings) {
        Map<String, Integer> served = new LinkedHashMap<>();
        for (Takings each : takings) {
            each.stand(date, confidence);
        }
        for (int left = trays; left > 0; left--) {
            Takings first = null;
            for (Takings each : takings) {
                if (each.ends != null && (first == null || each.ends.isBefore(first.ends))) {
                    first = each;
                }
            }
            if (first == null) {
                break;
            }
            first.take();
            served.merge(first.lot.batch(), 1, Integer::sum);
        }
        return served.entrySet().stream()
                .map(share -> new Share(share.getKey(), share.getValue()))
                .toList();
    }

    private List<Integer> promisesByDate() {
        List<Integer> order = new ArrayList<>(promises.size());
        for (int i = 0; i < promises.size(); i++) {
            order.add(i);
        }
        order.sort(Comparator.comparing((Integer i) -> promises.get(i).dueOn(today))
                .thenComparing(promises::get, Allotment.SENIORITY));
        return order;
    }

    private static long placed(List<List<Share>> shares) {
        return shares.stream().flatMap(List::stream).mapToLong(Share::trays).sum();
    }

    private static long wanted(int[] kept) {
        return Arrays.stream(kept).asLongStream().sum();
    }

    /** Which trays of one lot are gone, and which of the rest a promise would get. */
    private static final class Takings {

        private final SupplyLot lot;
        private boolean[] taken = {};
        private @Nullable LotOffer offer;

        /** The last free tray that is offered, 0 if none is. */
        private int tray;

        /** The last date of that tray; null if there is none. */
        private @Nullable LocalDate ends;

        Takings(SupplyLot lot) {
            this.lot = lot;
        }

        void stand(LocalDate date, double confidence) {
            LotOffer then = lot.at(confidence);
            int offered = then.on(date);
            if (offered >= taken.length) {
                taken = Arrays.copyOf(taken, offered + 1);
            }
            offer = then;
            goTo(offered);
        }

        void take() {
            taken[tray] = true;
            goTo(tray - 1);
        }

        private void goTo(int upTo) {
            tray = upTo;
            while (tray > 0 && taken[tray]) {
                tray--;
            }
            ends = tray == 0 || offer == null ? null : offer.lastWith(tray);
        }
    }
}
