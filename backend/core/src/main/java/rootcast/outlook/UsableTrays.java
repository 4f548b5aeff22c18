package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.Arrays;
import java.util.function.IntToDoubleFunction;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import rootcast.numerics.NormalShare;
import rootcast.numerics.ThinnedTail;

/**
 * How many trays of a batch can leave at a moment: filled, after patching, with plants that are alive, through with their
 * last stage and not past their last good day. A plant is past it once the hold days have gone since it was
 * through itself.
 *
 * <p>One joint law. Each node of the batch's rate has a date at which nine cells in ten are through ({@link
 * DateDistribution}: rate, temperatures to come, gaps); between nodes the probability is spread evenly. How far the batch's own
 * cells lie apart is one of three spreads ({@link CellSpread#WEIGHTS}). Given date and spread a living cell
 * is through by t with G(t) ({@link CellTimes}) and usable with G(t) − G(t − hold), each for itself; of N living plants,
 * N as {@link Survivors} says and independent of the date, at least m are usable as {@link ThinnedTail} says. If plants have
 * shipped, see {@link Shipped}.
 *
 * <p>Everything is worked out when it is asked for, from an outlook that does not change any more.
 */
public final class UsableTrays {

    /** In a piece of the dates' probability no quantile of the cells moves further than this. */
    private static final double PIECE = 0.2;

    /** Nor is it cut into smaller probabilities than this, and of nodes no further apart those between are left out. */
    private static final double LEAST_MASS = 5e-4;

    /** Fewer than one cell in a million lies beyond this quantile: what moves there moves nothing. */
    private static final double SEEN = 4.75;

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
        return new Leaving(leaves)::atLeast;
    }

    /**
     * The share of usable plants at a moment, as points between which it moves straight, for one spread of the cells after
     * the other.
     */
    private final class Leaving {

        private double[] share = new double[6 * RateBelief.NODES];

        /** The same of all plants with the shipped ones counted in, and the weight of that; used if some have shipped. */
        private double[] shareOfAll = new double[shipped == null ? 0 : share.length];

        private double[] weightOfAll = new double[shareOfAll.length];

        /** Probability of the piece that begins at the point of the same number; 0 where none does. */
        private double[] mass = new double[share.length];

        private int size;

        Leaving(Instant leaves) {
            double[] now = cells.beyond(leaves.toEpochMilli());
            double[] past = cells.beyond(leaves.minus(hold).toEpochMilli());
            double[] then =
                    shipped == null ? null : cells.beyond(shipped.lastAt().toEpochMilli());
            for (int factor = 0; factor < CellSpread.WEIGHTS.length; factor++) {
                addSegments(
                        cells.z(now, factor),
                        cells.z(past, factor),
                        then == null ? null : cells.z(then, factor),
                        CellSpread.WEIGHTS[factor]);
            }
        }

        private void addSegments(double[] z, double[] zPast, double @Nullable [] zShipped, double weight) {
            int node = RateBelief.NODES - 1;
            addPoint(zShipped == null ? 0 : zShipped[node], z[node], zPast[node]);
            while (node > 0 && !cells.isNever(node - 1)) {
                int slower = node - 1;
                while (slower > 0
                        && !cells.isNever(slower - 1)
                        && cells.slowerShare(node) - cells.slowerShare(slower) < LEAST_MASS) {
                    slower--;
                }
                addSegment(
                        node,
                        slower,
                        z,
                        zPast,
                        zShipped,
                        weight * (cells.slowerShare(node) - cells.slowerShare(slower)));
                node = slower;
            }
        }

        private void addSegment(
                int node, int slower, double[] z, double[] zPast, double @Nullable [] zShipped, double ofSegment) {
            double moves = Math.max(
                    Math.abs(seen(z[node]) - seen(z[slower])), Math.abs(seen(zPast[node]) - seen(zPast[slower])));
            int pieces = (int) Math.max(1, Math.ceil(Math.min(moves / PIECE, ofSegment / LEAST_MASS)));
            for (int piece = 1; piece <= pieces; piece++) {
                double part = (double) piece / pieces;
                mass[size - 1] = ofSegment / pieces;
                addPoint(
                        zShipped == null ? 0 : between(zShipped, node, slower, part),
                        between(z, node, slower, part),
                        between(zPast, node, slower, part));
            }
        }

        private static double seen(double z) {
            return Math.max(-SEEN, Math.min(SEEN, z));
        }

        private static double between(double[] z, int node, int slower, double part) {
            return z[node] + part * (z[slower] - z[node]);
        }

        private void addPoint(double zShipped, double z, double zPast) {
            if (size == share.length) {
                share = Arrays.copyOf(share, 2 * size);
                mass = Arrays.copyOf(mass, 2 * size);
                shareOfAll = Arrays.copyOf(shareOfAll, 2 * shareOfAll.length);
                weightOfAll = Arrays.copyOf(weightOfAll, 2 * weightOfAll.length);
            }
            double through = NormalShare.below(z);
            double past = NormalShare.below(zPast);
            if (shipped == null) {
                share[size] = through - past;
            } else {
                Shipped.Usable usable = shipped.usable(NormalShare.below(zShipped), through, past);
                share[size] = usable.ofBench();
                shareOfAll[size] = usable.ofAll();
                weightOfAll[size] = usable.weight();
            }
            size++;
        }

        double atLeast(int number) {
            if (number <= 0) {
                return 1;
            }
            if (number > trays.most()) {
                return 0;
            }
            double sum = shipped == null
                    ? trays.of(number).mean(share, mass, size)
                    : mixed(trays.of(number), shipped.trays().of(number));
            return Math.max(0, Math.min(1, sum));
        }

        private double mixed(ThinnedTail ofBench, ThinnedTail ofAll) {
            double[] massOfBench = new double[size];
            double[] massOfAll = new double[size];
            for (int i = 0; i < size - 1; i++) {
                double weight = (weightOfAll[i] + weightOfAll[i + 1]) / 2;
                massOfBench[i] = mass[i] * (1 - weight);
                massOfAll[i] = mass[i] * weight;
            }
            return ofBench.mean(share, massOfBench, size) + ofAll.mean(shareOfAll, massOfAll, size);
        }
    }
}
