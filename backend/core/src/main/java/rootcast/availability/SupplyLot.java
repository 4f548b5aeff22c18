package rootcast.availability;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * What the outlook makes of a batch for sales: trays that are usable from an uncertain ready date until they are past
 * their best.
 *
 * <p>At confidence q it offers, on a ship date, the largest n with {@code P(ready by the date) · P(at least n trays) ≥ q},
 * and nothing after its last usable date. So the offer only grows until it ends at once. Products within
 * {@value #ROUNDING} below q count as q: a probability of 0.9 that was computed as 0.8999999999999999 is 0.9.
 */
public final class SupplyLot {

    static final double ROUNDING = 1e-12;

    private final String batch;
    private final ReadyOdds odds;
    private final double[] tail;
    private final LocalDate usableUntilInclusive;

    /**
     * @param batch                id of the batch
     * @param odds                 when it is ready
     * @param tail                 {@code tail[n]} = probability of at least n saleable trays, once ready; {@code tail[0]}
     *                             is 1, never rising, not negative; more trays than the last index are impossible
     * @param usableUntilInclusive last date on which its trays may leave
     */
    public SupplyLot(String batch, ReadyOdds odds, double[] tail, LocalDate usableUntilInclusive) {
        this.batch = batch;
        this.odds = odds;
        this.tail = tail.clone();
        this.usableUntilInclusive = usableUntilInclusive;
        if (tail.length == 0 || tail[0] != 1) {
            throw new IllegalArgumentException(
                    "batch %s: at least 0 trays is certain, the tail must begin with 1".formatted(batch));
        }
        for (int n = 1; n < tail.length; n++) {
            if (!(tail[n] >= 0 && tail[n] <= tail[n - 1])) {
                throw new IllegalArgumentException("batch %s: odds %s of at least %d trays must lie between 0 and %s"
                        .formatted(batch, tail[n], n, tail[n - 1]));
            }
        }
    }

    public String batch() {
        return batch;
    }

    public LocalDate usableUntilInclusive() {
        return usableUntilInclusive;
    }

    /** Probability that the batch is ready by {@code date}; it says nothing of whether it is still usable then. */
    public double readyBy(LocalDate date) {
        double readyBy = odds.readyBy(date);
        if (!(readyBy >= 0 && readyBy <= 1)) {
            throw new IllegalStateException("batch %s: odds %s of being ready by %s".formatted(batch, readyBy, date));
        }
        return readyBy;
    }

    /** Probability of at least {@code trays} saleable trays once it is ready; 0 beyond what is possible. */
    public double atLeast(int trays) {
        return trays < tail.length ? tail[trays] : 0;
    }

    /** Trays that may be promised from this lot alone for {@code date}, 0 after the last usable date. */
    public int traysAt(LocalDate date, double confidence) {
        Confidence.checked(confidence);
        return date.isAfter(usableUntilInclusive) ? 0 : traysFor(readyBy(date), confidence);
    }

    /** First date from {@code earliestInclusive} on which it offers a tray, null if there is none. */
    public @Nullable LocalDate usableFrom(LocalDate earliestInclusive, double confidence) {
        if (traysAt(usableUntilInclusive, confidence) == 0 || earliestInclusive.isAfter(usableUntilInclusive)) {
            return null;
        }
        long soonest = earliestInclusive.toEpochDay();
        long surely = usableUntilInclusive.toEpochDay();
        while (soonest < surely) {
            long middle = Math.floorDiv(soonest + surely, 2);
            if (traysAt(LocalDate.ofEpochDay(middle), confidence) > 0) {
                surely = middle;
            } else {
                soonest = middle + 1;
            }
        }
        return LocalDate.ofEpochDay(surely);
    }

    int traysFor(double readyBy, double confidence) {
        double least = confidence - ROUNDING;
        int enough = 0;
        int tooMany = tail.length;
        while (tooMany - enough > 1) {
            int middle = (enough + tooMany) >>> 1;
            if (readyBy * tail[middle] >= least) {
                enough = middle;
            } else {
                tooMany = middle;
            }
        }
        return enough;
    }
}
