package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import rootcast.numerics.NormalShare;

/**
 * How many trays of a batch can leave at a moment: filled, after patching, with plants that are alive, through with their
 * last stage and not past their last good day. A plant is past it once the hold days have gone since it was
 * through itself.
 *
 * <p>One joint law. Each node of the batch's rate has a date at which nine cells in ten are through ({@link
 * DateDistribution}: rate, temperatures to come, gaps); between nodes the probability is spread evenly. How far the batch's own
 * cells lie apart is one of three spreads ({@link CellSpread#WEIGHTS}). Given date and spread a living cell
 * is through by t with G(t) ({@link CellTimes}) and usable with G(t) − G(t − hold), each for itself; of N living plants,
 * N as {@link Survivors} says and independent of the date, at least m are usable as {@link rootcast.numerics.ThinnedTail} says. If plants have
 * shipped, see {@link Shipped}.
 *
 * <p>Everything is worked out when it is asked for, from an outlook that does not change any more.
 */
public final class UsableTrays {

    /** What the bounds of time may leave out or hold too much of, in probability. */
    private static final double MARGIN = 1e-3;

    /** So long after the slowest date no cell is waited for any more. */
    private static final Duration STRAGGLERS = Duration.ofDays(60);

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double SURELY_PAST = NORMAL.inverseCumulativeProbability(1 - 1e-6);

    private final CellTimes cells;
    private final FillableTrays trays;
    private final Duration hold;
    private final @Nullable Shipped shipped;

    UsableTrays(CellTimes cells, FillableTrays trays, Duration hold, @Nullable Shipped shipped) {
        this.cells = cells;
        this.trays = trays;
        this.hold = hold;
        this.shipped = shipped;
    }

    /** More trays than these have not this probability on any day. */
    public int most(double probability) {
        int most = 0;
        int tooMany = trays.most() + 1;
        while (tooMany - most > 1) {
            int middle = (most + tooMany) >>> 1;
            if (trays.whole(middle) >= probability) {
                most = middle;
            } else {
                tooMany = middle;
            }
        }
        return most;
    }

    /** Whether one tray cannot have this probability at the moment because too few cells are through, nor before it. */
    public boolean isTooEarly(Instant leaves, double probability) {
        if (trays.most() == 0) {
            return true;
        }
        int node = 0;
        while (node < RateBelief.NODES - 1 && cells.slowerShare(node) < 1 - probability + MARGIN) {
            node++;
        }
        double least = shipped == null
                ? trays.of(1).low()
                : trays.of(1).low() * trays.mean() / shipped.trays().mean();
        double days = cells.daysBy(leaves.toEpochMilli());
        double most = 0;
        for (int factor = 0; factor < CellSpread.WEIGHTS.length; factor++) {
            most = Math.max(most, NormalShare.below(cells.z(node, days, factor)));
        }
        return most < least - MARGIN;
    }

    /** Whether one tray cannot have this probability at the moment because too many cells are past, nor after it. */
    public boolean isTooLate(Instant leaves, double probability) {
        long last = cells.lastMillis();
        if (trays.most() == 0
                || last == DevelopmentCurve.NEVER
                || leaves.isAfter(Instant.ofEpochMilli(last).plus(hold).plus(STRAGGLERS))) {
            return true;
        }
        int node = RateBelief.NODES - 1;
        while (node > 0 && cells.slowerShare(node) > probability - MARGIN) {
            node--;
        }
        double days = cells.daysBy(leaves.minus(hold).toEpochMilli());
        double zPast = CellTimes.REACH;
        for (int factor = 0; factor < CellSpread.WEIGHTS.length; factor++) {
            zPast = Math.min(zPast, cells.z(node, days, factor));
        }
        return shipped == null ? NormalShare.below(zPast) > 1 - trays.of(1).low() + MARGIN : zPast > SURELY_PAST;
    }

    /** P(at least so many trays can leave at the moment), for any number of trays up to the most there can be. */
    public IntToDoubleFunction at(Instant leaves) {
        return new UsableAt(cells, trays, hold, shipped, leaves)::atLeast;
    }
}
