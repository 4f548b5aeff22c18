package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import org.jspecify.annotations.Nullable;
import rootcast.numerics.NormalShare;

/**
 * When the cells of a batch are through with their last stage, by node of what is believed of its rate.
 *
 * <p>Safe for use by several threads at once.
 *
 * <p>In the world of a node nine living cells in ten are through at the node's date T. A cell's own time is log-normal
 * around the batch's on the clock since sticking (see {@link CellSpread}), where x(t) = 1 + M · (R(t) − R(T)) / days is the
 * development that the batch has of its last stage at t, 1 at T.
 */
final class CellTimes {

    /** Beyond it every cell is through, or none is. */
    static final double REACH = 9;

    private final DevelopmentPath.Moment path;
    private final RateBelief rate;
    private final long[] datesMillis;
    private final long lastMillis;
    private final double daysAtReference;
    private final CellSpread spread;

    /** Looked up when first asked for; looked up twice at worst, to the same. */
    private double @Nullable [] daysByDate;

    private CellTimes(
            DevelopmentPath.Moment path,
            RateBelief rate,
            long[] datesMillis,
            double daysAtReference,
            CellSpread spread) {
        this.path = path;
        this.rate = rate;
        this.datesMillis = datesMillis;
        this.lastMillis = last(datesMillis);
        this.daysAtReference = daysAtReference;
        this.spread = spread;
    }

    /**
     * @param rate        of the last stage, by node of its date
     * @param spread      of the cells at the end of the last stage
     * @param datesMillis by node, when nine cells in ten are through; not changed any more
     */
    static CellTimes of(StagePath path, RateBelief rate, CellSpread spread, long[] datesMillis) {
        int last = StagePath.STAGES - 1;
        return new CellTimes(path.moment(last), rate, datesMillis, path.daysAtReference(last), spread);
    }

    /** The dates where there is no doubt about one. */
    static long[] certain(Instant date) {
        long[] dates = new long[RateBelief.NODES];
        Arrays.fill(dates, date.toEpochMilli());
        return dates;
    }

    /** Share of the cells that are through and not past their last good day, in the world of a node. */
    double usableShare(int node, Instant at, int holdDays) {
        long millis = at.toEpochMilli();
        long past = at.minus(Duration.ofDays(holdDays)).toEpochMilli();
        return NormalShare.below(z(node, daysBy(millis), CellSpread.USUAL))
                - NormalShare.below(z(node, daysBy(past), CellSpread.USUAL));
    }

    private double[] daysByDate() {
        double[] known = daysByDate;
        if (known == null) {
            known = new double[RateBelief.NODES];
            for (int node = 0; node < RateBelief.NODES; node++) {
                known[node] = isNever(node) ? Double.POSITIVE_INFINITY : path.daysBy(datesMillis[node]);
            }
            daysByDate = known;
        }
        return known;
    }

    boolean isNever(int node) {
        return datesMillis[node] == DevelopmentCurve.NEVER;
    }

    /** The latest date of any node; that of the fastest if the others never come. */
    long lastMillis() {
        return lastMillis;
    }

    private static long last(long[] datesMillis) {
        long last = Long.MIN_VALUE;
        for (long millis : datesMillis) {
            last = millis == DevelopmentCurve.NEVER ? last : Math.max(last, millis);
        }
        return last == Long.MIN_VALUE ? DevelopmentCurve.NEVER : last;
    }

    double slowerShare(int node) {
        return rate.slowerShare(node);
    }

    double daysBy(long millis) {
        return path.daysBy(millis);
    }

    /**
     * Standard normal quantile of the share of cells that are through, −{@value #REACH} to {@value #REACH}.
     *
     * @param factor number of one of the factors on the spread, see {@link CellSpread#WEIGHTS}
     */
    double z(int node, double daysByThen, int factor) {
        return quantile(beyond(node, daysByThen), factor);
    }

    private double quantile(double beyond, int factor) {
        return Math.max(-REACH, Math.min(REACH, spread.quantile(beyond, factor)));
    }

    /** See {@link CellSpread#beyond}. */
    private double beyond(int node, double daysByThen) {
        return spread.beyond(1 + rate.multiplier(node) * (daysByThen - daysByDate()[node]) / daysAtReference);
    }

    /** At a moment by node; the same for every spread. */
    double[] beyond(long millis) {
        double days = path.daysBy(millis);
        double[] beyond = new double[RateBelief.NODES];
        for (int node = 0; node < beyond.length; node++) {
            beyond[node] = beyond(node, days);
        }
        return beyond;
    }

    double[] z(double[] beyond, int factor) {
        double[] z = new double[RateBelief.NODES];
        for (int node = 0; node < z.length; node++) {
            z[node] = quantile(beyond[node], factor);
        }
        return z;
    }
}
