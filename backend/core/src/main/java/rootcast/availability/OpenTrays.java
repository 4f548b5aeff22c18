package rootcast.availability;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;

/**
 * How many trays of a cell can still be promised for a ship date with every promise kept; exact.
 *
 * <p>Every promise must hold at the confidence it was made at: for each such level, the promises made at it or higher
 * must fit the lots as they count at it. So a new promise at confidence q may take the least slack among level q and the
 * lower levels that promises were made at; levels above q do not see it. Figures of several dates are alternatives, they
 * do not add up.
 *
 * <p>Where promises are short already, their shortage is held back from the other dates too: trays stay free for moving
 * the customer who waits.
 *
 * <p>Cost: dates² + dates · windows per level, a lot having at most one window of trays for each step of its offer.
 */
public final class OpenTrays {

    private final ListedDates dates;
    private final List<SupplyLot> lots;
    private final List<Promise> promises;

    /** Date number per promise. */
    private final int[] dueOn;

    /** One per confidence that a promise was made at, rising. */
    private final LeastSlack[] levels;

    private OpenTrays(CellSupply supply, ListedDates dates) {
        this.promises = supply.promises();
        this.dueOn = new int[promises.size()];
        for (int i = 0; i < dueOn.length; i++) {
            dueOn[i] = dates.numberOf(promises.get(i).dueOn(supply.today()));
        }
        this.dates = dates;
        this.lots = supply.lots();
        double[] confidences = confidencesOf(promises);
        this.levels = new LeastSlack[confidences.length];
        for (int level = 0; level < levels.length; level++) {
            levels[level] = levelAt(confidences[level]);
        }
    }

    /**
     * @param asked dates to answer for, none before today
     * @throws IllegalArgumentException if a date lies before today
     */
    public static OpenTrays of(CellSupply supply, Collection<LocalDate> asked) {
        return new OpenTrays(supply, ListedDates.of(supply.promises(), asked, supply.today()));
    }

    /** Whether all promises can be kept, each at the confidence it was made at. */
    public boolean everyPromiseFits() {
        for (LeastSlack level : levels) {
            if (!level.everyPromiseFits()) {
                return false;
            }
        }
        return true;
    }

    /** The answers for a new promise made at {@code confidence}; never more at a higher one. */
    public OpenAt at(double confidence) {
        Confidence.checked(confidence);
        int lower = 0;
        while (lower < levels.length && levels[lower].lots.confidence < confidence) {
            lower++;
        }
        LeastSlack[] bearing = Arrays.copyOf(levels, lower + 1);
        boolean alreadyThere = lower < levels.length && levels[lower].lots.confidence == confidence;
        bearing[lower] = alreadyThere ? levels[lower] : levelAt(confidence);
        return new OpenAt(dates, bearing);
    }

    private LeastSlack levelAt(double confidence) {
        long[] promised = new long[dates.count() + 2];
        for (int i = 0; i < dueOn.length; i++) {
            if (promises.get(i).confidence() >= confidence) {
                promised[dueOn[i]] += promises.get(i).trays();
            }
        }
        return new LeastSlack(new LotsAtConfidence(lots, dates, confidence), promised);
    }

    private static double[] confidencesOf(List<Promise> promises) {
        double[] all = new double[promises.size()];
        int count = 0;
        for (Promise promise : promises) {
            if (promise.trays() > 0 && !contains(all, count, promise.confidence())) {
                all[count++] = promise.confidence();
            }
        }
        double[] distinct = Arrays.copyOf(all, count);
        Arrays.sort(distinct);
        return distinct;
    }

    private static boolean contains(double[] values, int count, double wanted) {
        for (int i = 0; i < count; i++) {
            if (values[i] == wanted) {
                return true;
            }
        }
        return false;
    }
}
