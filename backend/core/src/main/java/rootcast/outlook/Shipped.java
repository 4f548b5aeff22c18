package rootcast.outlook;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import rootcast.crop.TrayFormat;
import rootcast.numerics.CountDistribution;

/**
 * Plants of a batch that have left since its last full count: they were through when they did, any of those that were, so
 * fewer of the rest are.
 *
 * <p>Let of Q plants the share g have been through when the last of S left, so that Q·g − S such plants stayed with the Q(1 − g) others.
 * Of the former the share a is usable at a moment, of the latter the share b. As long as no plant is past its day (a = 1), at least
 * m of the rest are usable exactly if at least m + S of all Q are through: the binomial of Q with the shipped counted in. If all were
 * through when the plants left (g = 1) the rest is any sample: the binomial of the plants on the bench. In between the mean is the same in
 * both, and they are mixed so that the variance is right: Q·g(1 − g)(a − b)² + (Q·g − S)·a(1 − a) + Q(1 − g)·b(1 − b).
 *
 * @param trays  of all plants, the shipped ones counted in
 * @param plants S
 * @param lastAt when the last of them left; those before it are taken to have left with them
 */
record Shipped(FillableTrays trays, int plants, Instant lastAt) {

    static @Nullable Shipped of(BatchHistory history, CountDistribution onBench, TrayFormat format) {
        Instant last = history.lastShippedAt();
        int plants = history.shippedPlants();
        return last == null || plants == 0
                ? null
                : new Shipped(new FillableTrays(onBench, plants, format.saleCount()), plants, last);
    }

    /**
     * @param ofAll   share of all plants, the shipped ones included, that are usable or were
     * @param ofBench share of the plants on the bench that are usable
     * @param weight  of the binomial of all plants
     */
    record Usable(double ofAll, double ofBench, double weight) {}

    /**
     * @param then    share through when the plants left
     * @param through share through at the moment
     * @param past    share past its day at the moment
     */
    Usable usable(double then, double through, double past) {
        double all = trays.mean();
        double bench = all - plants;
        double stayed = Math.max(0, all * then - plants);
        double others = bench - stayed;
        double a = then > 0 ? Math.max(0, Math.min(then, through) - past) / then : 0;
        double b = then < 1 ? Math.max(0, through - Math.max(then, past)) / (1 - then) : 0;
        double mean = Math.min(bench, stayed * a + others * b);
        double ofAll = (mean + plants) / all;
        double ofBench = bench > 0 ? mean / bench : 0;
        double variance = all * then * (1 - then) * (a - b) * (a - b) + stayed * a * (1 - a) + others * b * (1 - b);
        double most = all * ofAll * (1 - ofAll);
        double least = bench * ofBench * (1 - ofBench);
        double weight = most > least ? Math.max(0, Math.min(1, (variance - least) / (most - least))) : 0;
        return new Usable(ofAll, ofBench, weight);
    }
}
