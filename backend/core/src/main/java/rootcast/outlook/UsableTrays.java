package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.function.IntToDoubleFunction;
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

    private static final double SURELY_PAST = 1 - 1e-6;

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
        double least = shipped == null
                ? trays.of(1).low()
                : trays.of(1).low() * trays.mean() / shipped.trays().mean();
        double days = cells.daysBy(leaves.toEpochMilli());
        return provesOfSomeSpreads(probability, (needed, widest) -> {
            int node = 0;
            while (node < RateBelief.NODES - 1 && cells.slowerShare(node) < 1 - needed + MARGIN) {
                node++;
            }
            double most = -CellTimes.REACH;
            for (int factor = 0; factor <= widest; factor++) {
                most = Math.max(most, cells.z(node, days, factor));
            }
            return NormalShare.below(most) < least - MARGIN;
        });
    }

    /** Whether one tray cannot have this probability at the moment because too many cells are past, nor after it. */
    public boolean isTooLate(Instant leaves, double probability) {
        long last = cells.lastMillis();
        if (trays.most() == 0
                || last == DevelopmentCurve.NEVER
                || leaves.toEpochMilli() > last + hold.toMillis() + STRAGGLERS.toMillis()) {
            return true;
        }
        double surely = shipped == null ? 1 - trays.of(1).low() + MARGIN : SURELY_PAST;
        double days = cells.daysBy(leaves.toEpochMilli() - hold.toMillis());
        return provesOfSomeSpreads(probability, (needed, widest) -> {
            int node = RateBelief.NODES - 1;
            while (node > 0 && cells.slowerShare(node) > needed - MARGIN) {
                node--;
            }
            double zPast = CellTimes.REACH;
            for (int factor = 0; factor <= widest; factor++) {
                zPast = Math.min(zPast, cells.z(node, days, factor));
            }
            return NormalShare.below(zPast) > surely;
        });
    }

    /** That one tray has not a probability, shown of all spreads up to one. */
    private interface Proof {

        boolean holds(double probability, int widest);
    }

    /**
     * Either of all spreads of the cells; or of all but the widest, whose weight is then granted: of the others one tray must
     * have so much the less probability. That spread has its first cells through, and its last cells past, days from the others.
     */
    private static boolean provesOfSomeSpreads(double probability, Proof proof) {
        int widest = CellSpread.WEIGHTS.length - 1;
        double granted = CellSpread.WEIGHTS[widest];
        return proof.holds(probability, widest)
                || (probability > granted && proof.holds((probability - granted) / (1 - granted), widest - 1));
    }

    /** P(at least so many trays can leave at the moment), for any number of trays up to the most there can be. */
    public IntToDoubleFunction at(Instant leaves) {
        return new UsableAt(cells, trays, hold, shipped, leaves)::atLeast;
    }

    /**
     * The same world by world.
     *
     * @param shared what the batch's date has in common with others of its house and crop
     */
    public UsableIn in(String batch, String crop, SharedDoubt shared) {
        return new UsableIn(cells, trays, hold, shipped, batch, crop, shared);
    }
}
