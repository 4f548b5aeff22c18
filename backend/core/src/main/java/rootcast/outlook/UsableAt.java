package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.numerics.NormalShare;
import rootcast.numerics.ThinnedTail;

/**
 * The share of plants that are usable at a moment, over all that is believed of the batch's rate and of how far its cells lie apart.
 *
 * <p>For each spread of the cells the dates' probability is cut at nodes of the rate; from one to the next the cells' normal
 * quantiles move straight. Such a stretch is looked at closely only where the answer depends on it: for a number of trays
 * most stretches have too few usable plants throughout, or plenty.
 */
final class UsableAt {

    /** In a piece of the dates' probability no quantile of the cells moves further than this. */
    private static final double PIECE = 0.2;

    /** Nor is it cut into smaller probabilities than this, and of nodes no further apart those between are left out. */
    private static final double LEAST_MASS = 5e-4;

    /** Fewer than one cell in a million lies beyond this quantile: taken as none. */
    private static final double SEEN = 4.75;

    private final FillableTrays trays;
    private final @Nullable Shipped shipped;
    private final List<Stretch> stretches = new ArrayList<>(64);

    UsableAt(CellTimes cells, FillableTrays trays, Duration hold, @Nullable Shipped shipped, Instant leaves) {
        this.trays = trays;
        this.shipped = shipped;
        double[] now = cells.beyond(leaves.toEpochMilli());
        double[] past = cells.beyond(leaves.minus(hold).toEpochMilli());
        double[] then = shipped == null ? null : cells.beyond(shipped.lastAt().toEpochMilli());
        for (int factor = 0; factor < CellSpread.WEIGHTS.length; factor++) {
            addStretches(
                    cells,
                    cells.z(now, factor),
                    cells.z(past, factor),
                    then == null ? null : cells.z(then, factor),
                    CellSpread.WEIGHTS[factor]);
        }
    }

    private void addStretches(
            CellTimes cells, double[] z, double[] zPast, double @Nullable [] zShipped, double weight) {
        int node = RateBelief.NODES - 1;
        double through = share(z[node]);
        double past = share(zPast[node]);
        while (node > 0 && !cells.isNever(node - 1)) {
            int slower = node - 1;
            while (slower > 0
                    && !cells.isNever(slower - 1)
                    && (cells.slowerShare(node) - cells.slowerShare(slower) < LEAST_MASS
                            || isStill(node, slower - 1, z, zPast, zShipped))) {
                slower--;
            }
            double throughTo = share(z[slower]);
            double pastTo = share(zPast[slower]);
            stretches.add(new Stretch(
                    weight * (cells.slowerShare(node) - cells.slowerShare(slower)),
                    Math.min(through, throughTo) - Math.max(past, pastTo),
                    Math.max(through, throughTo) - Math.min(past, pastTo),
                    new Straight(z[node], z[slower]),
                    new Straight(zPast[node], zPast[slower]),
                    zShipped == null ? Straight.ZERO : new Straight(zShipped[node], zShipped[slower])));
            through = throughTo;
            past = pastTo;
            node = slower;
        }
    }

    /** Whether nothing that can be seen moves between two nodes. */
    private static boolean isStill(int node, int slower, double[] z, double[] zPast, double @Nullable [] zShipped) {
        return seen(z[node]) == seen(z[slower])
                && seen(zPast[node]) == seen(zPast[slower])
                && (zShipped == null || seen(zShipped[node]) == seen(zShipped[slower]));
    }

    /** None and all beyond what can be seen, so that it does not matter where stretches in which nothing moves are cut. */
    private static double share(double z) {
        return z <= -SEEN ? 0 : z >= SEEN ? 1 : NormalShare.below(z);
    }

    private static double seen(double z) {
        return Math.max(-SEEN, Math.min(SEEN, z));
    }

    /** P(at least so many trays can leave). */
    double atLeast(int number) {
        if (number <= 0) {
            return 1;
        }
        if (number > trays.most()) {
            return 0;
        }
        ThinnedTail ofBench = trays.of(number);
        ThinnedTail ofAll = shipped == null ? null : shipped.trays().of(number);
        double sum = 0;
        for (Stretch each : stretches) {
            sum += ofAll == null ? each.of(ofBench) : each.mixed(ofBench, ofAll);
        }
        return Math.max(0, Math.min(1, sum));
    }

    /** A normal quantile of the cells from one node to the next. */
    private record Straight(double from, double to) {

        static final Straight ZERO = new Straight(0, 0);

        double moves() {
            return Math.abs(seen(from) - seen(to));
        }

        /** Share of the cells, {@code part} of the way. */
        double share(double part) {
            return UsableAt.share(from + part * (to - from));
        }
    }

    /** Some probability, over which the quantiles of cells through, past and through when plants shipped move straight. */
    private final class Stretch {

        private final double mass;

        /** The share usable lies between these all along; used if no plants have shipped. */
        private final double low;

        private final double high;

        private final Straight through;
        private final Straight past;
        private final Straight then;

        private double @Nullable [] share;

        /** Probability of the piece that begins at the point of the same number. */
        private double[] masses = {};

        /** The same of all plants with the shipped ones counted in, and the weight of that; used if some have shipped. */
        private double[] shareOfAll = {};

        private double[] massOfAll = {};

        Stretch(double mass, double low, double high, Straight through, Straight past, Straight then) {
            this.mass = mass;
            this.low = low;
            this.high = high;
            this.through = through;
            this.past = past;
            this.then = then;
        }

        double of(ThinnedTail tail) {
            if (high <= tail.low()) {
                return 0;
            }
            if (low >= tail.high()) {
                return mass * tail.whole();
            }
            double[] shares = shares();
            return tail.mean(shares, masses, shares.length);
        }

        double mixed(ThinnedTail ofBench, ThinnedTail ofAll) {
            double[] shares = shares();
            return ofBench.mean(shares, masses, shares.length) + ofAll.mean(shareOfAll, massOfAll, shares.length);
        }

        private double[] shares() {
            double[] known = share;
            return known == null ? cut() : known;
        }

        private double[] cut() {
            double moves = Math.max(through.moves(), past.moves());
            int pieces = (int) Math.max(1, Math.ceil(Math.min(moves / PIECE, mass / LEAST_MASS)));
            double[] shares = new double[pieces + 1];
            masses = new double[pieces + 1];
            Shipped gone = shipped;
            if (gone != null) {
                shareOfAll = new double[pieces + 1];
                massOfAll = new double[pieces + 1];
            }
            double weightBefore = 0;
            for (int point = 0; point <= pieces; point++) {
                double part = (double) point / pieces;
                double ofThrough = through.share(part);
                double ofPast = past.share(part);
                if (gone == null) {
                    shares[point] = ofThrough - ofPast;
                    masses[point] = mass / pieces;
                } else {
                    Shipped.Usable usable = gone.usable(then.share(part), ofThrough, ofPast);
                    shares[point] = usable.ofBench();
                    shareOfAll[point] = usable.ofAll();
                    if (point > 0) {
                        double ofAll = (weightBefore + usable.weight()) / 2;
                        masses[point - 1] = mass / pieces * (1 - ofAll);
                        massOfAll[point - 1] = mass / pieces * ofAll;
                    }
                    weightBefore = usable.weight();
                }
            }
            share = shares;
            return shares;
        }
    }
}
