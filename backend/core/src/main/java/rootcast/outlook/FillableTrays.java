package rootcast.outlook;

import java.util.concurrent.atomic.AtomicReferenceArray;
import rootcast.numerics.CountDistribution;
import rootcast.numerics.ThinnedTail;

/**
 * P(at least n trays can be filled, after patching) by the share of plants that are usable. It depends on the survivors
 * alone, so what was worked out for a number of trays stays good until the batch has a new entry.
 *
 * <p>Plants that have shipped may be counted in: of all that were alive then so many more must be usable.
 */
final class FillableTrays {

    private final CountDistribution living;
    private final int shipped;
    private final int saleCount;
    private final AtomicReferenceArray<ThinnedTail> byTrays;

    /**
     * @param onBench plants alive on the bench
     * @param shipped plants that left since the last full count and count in; 0 if none do
     */
    FillableTrays(CountDistribution onBench, int shipped, int saleCount) {
        this.living = onBench.plus(shipped);
        this.shipped = shipped;
        this.saleCount = saleCount;
        this.byTrays = new AtomicReferenceArray<>(onBench.last() / saleCount + 1);
    }

    /** More trays cannot be. */
    int most() {
        return byTrays.length() - 1;
    }

    /** Of the plants on the bench so many, or fewer, are alive with this probability. */
    int alive(double probability) {
        return living.quantile(probability) - shipped;
    }

    /** Trays that so many usable plants fill. */
    int filledBy(int usable) {
        return usable / saleCount;
    }

    /** Mean number of those that count. */
    double mean() {
        return living.mean();
    }

    /** P(at least this many trays if every plant alive is usable). */
    double whole(int trays) {
        return living.atLeast(needed(trays));
    }

    /**
     * @param trays 1 to {@link #most()}
     */
    ThinnedTail of(int trays) {
        ThinnedTail known = byTrays.get(trays);
        if (known == null) {
            known = new ThinnedTail(living, needed(trays));
            byTrays.set(trays, known); // worked out twice at worst, to the same
        }
        return known;
    }

    private int needed(int trays) {
        return trays * saleCount + shipped;
    }
}
