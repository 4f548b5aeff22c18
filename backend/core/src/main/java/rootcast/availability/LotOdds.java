package rootcast.availability;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** Ready odds of every lot on every listed date, asked once and used at every confidence. */
final class LotOdds {

    private static final Comparator<SupplyLot> EARLIEST_EXPIRY =
            Comparator.comparing(SupplyLot::usableUntilInclusive).thenComparing(SupplyLot::batch);

    final ListedDates dates;

    /** The first to end first; those that end together by batch, so that the order they came in decides nothing. */
    final List<SupplyLot> lots;

    /** Per lot, by date number up to its last usable date; index 0 is unused. */
    private final double[][] readyBy;

    LotOdds(List<SupplyLot> lots, ListedDates dates) {
        this.dates = dates;
        this.lots = new ArrayList<>(lots);
        this.lots.sort(EARLIEST_EXPIRY);
        this.readyBy = new double[lots.size()][];
        for (int lot = 0; lot < readyBy.length; lot++) {
            readyBy[lot] = oddsOf(this.lots.get(lot));
        }
    }

    private double[] oddsOf(SupplyLot lot) {
        double[] odds = new double[dates.lastUpTo(lot.usableUntilInclusive()) + 1];
        for (int date = 1; date < odds.length; date++) {
            double now = lot.readyBy(dates.date(date));
            if (now < odds[date - 1] - SupplyLot.ROUNDING) {
                throw new IllegalStateException("batch %s: odds of being ready fall from %s to %s on %s"
                        .formatted(lot.batch(), odds[date - 1], now, dates.date(date)));
            }
            odds[date] = Math.max(now, odds[date - 1]);
        }
        return odds;
    }

    /** Number of the last listed date on which the lot is usable, 0 if none. */
    int lastDate(int lot) {
        return readyBy[lot].length - 1;
    }

    int traysAt(int lot, int date, double confidence) {
        return date > lastDate(lot) ? 0 : lots.get(lot).traysFor(readyBy[lot][date], confidence);
    }
}
