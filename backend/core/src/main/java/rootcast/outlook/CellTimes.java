package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import rootcast.numerics.NormalShare;

/**
 * When the cells of a batch are through with their last stage, by node of what is believed of its rate.
 *
 * <p>Safe for use by several threads at once.
 *
 * <p>In the world of a node nine living cells in ten are through at the node's date T. A cell's own time is log-normal
 * around the batch's (see {@link CellSpread}): it is through by t with probability Φ(ln x(t) / spread + z₀.₉), where
 * x(t) = 1 + M · (R(t) − R(T)) / days is the development that the batch has of its last stage at t, 1 at T.
 */
final class CellTimes {

    /** Beyond it every cell is through, or none is. */
    static final double REACH = 9;

    private static final double Z_COMPLETE = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.9);

    private final DevelopmentPath.Moment path;
    private final RateBelief rate;
    private final long[] datesMillis;
    private final double daysAtReference;
    private final double spread;

    /** Looked up when first asked for; looked up twice at worst, to the same. */
    private double @Nullable [] daysByDate;

    private CellTimes(
            DevelopmentPath.Moment path, RateBelief rate, long[] datesMillis, double daysAtReference, double spread) {
        this.path = path;
        this.rate = rate;
        this.datesMillis = datesMillis;
        this.daysAtReference = daysAtReference;
        this.spread = spread;
    }

    /**
     * @param rate        of the last stage, by node of its date
     * @param spread      standard deviation of ln(a cell's time) in the last stage
     * @param datesMillis by node, when nine cells in ten are through; not changed any more
     */
    static CellTimes of(StagePath path, RateBelief rate, double spread, long[] datesMillis) {
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
        return NormalShare.below(z(node, daysBy(millis), 1)) - NormalShare.below(z(node, daysBy(past), 1));
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
        return Arrays.stream(datesMillis)
                .filter(millis -> millis != DevelopmentCurve.NEVER)
                .max()
                .orElse(DevelopmentCurve.NEVER);
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
     * @param spreadFactor how much wider the batch's own cells lie apart, see {@link CellSpread#FACTORS}
     */
    double z(int node, double daysByThen, double spreadFactor) {
        return quantile(logProgress(node, daysByThen), spreadFactor);
    }

    private double quantile(double logProgress, double spreadFactor) {
        return Math.max(-REACH, Math.min(REACH, logProgress / (spread * spreadFactor) + Z_COMPLETE));
    }

    /** ln of the development the batch has of its last stage; minus infinity before it begins. */
    private double logProgress(int node, double daysByThen) {
        double progress = 1 + rate.multiplier(node) * (daysByThen - daysByDate()[node]) / daysAtReference;
        return progress > 0 ? Math.log(progress) : Double.NEGATIVE_INFINITY;
    }

    /** At a moment by node; the same for every spread. */
    double[] logProgress(long millis) {
        double days = path.daysBy(millis);
        double[] logs = new double[RateBelief.NODES];
        for (int node = 0; node < logs.length; node++) {
            logs[node] = logProgress(node, days);
        }
        return logs;
    }

    double[] z(double[] logProgress, double spreadFactor) {
        double[] z = new double[RateBelief.NODES];
        for (int node = 0; node < z.length; node++) {
            z[node] = quantile(logProgress[node], spreadFactor);
        }
        return z;
    }
}
