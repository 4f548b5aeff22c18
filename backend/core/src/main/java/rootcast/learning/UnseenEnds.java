package rootcast.learning;

import org.apache.commons.statistics.distribution.NormalDistribution;
import org.jspecify.annotations.Nullable;
import rootcast.numerics.NormalShare;

/**
 * What the stages of one batch say of y = ln(reference-days), nobody having seen the moment at which any of them ended.
 *
 * <p>A stage entered as complete had ended u days before, anywhere within bounds; the end of one stage is the begin of the next.
 * So it took D = G + b·u(begin) − e·u(end), with G the reference-days between the two entries and b and e the rates around them. What was
 * seen is as likely as that all u lie within their bounds. For y normal that is an integral over the ends, each by
 * Gauss and Legendre where y is likely to be, the last one in closed form.
 *
 * <p>Source: interval-censored times, Lawless 2003, Statistical Models and Methods for Lifetime Data, §2.3; moments of a
 * truncated normal, Johnson, Kotz and Balakrishnan 1994, Continuous Univariate Distributions 1, §13.10.
 *
 * <p>Units: days for u, reference-days for D and G.
 */
final class UnseenEnds {

    /** A stage cannot be told from none below this. */
    private static final double LEAST_DAYS = 1e-3;

    private static final double REACH_SD = 4;
    private static final double NARROW = 1e-3;
    private static final double ROOT_2PI = Math.sqrt(2 * Math.PI);
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);

    /** Abramowitz and Stegun 1972, table 25.4, n = 10. */
    private static final double[] HALF_NODES = {
        0.148874338981631, 0.433395394129247, 0.679409568299024, 0.865063366688985, 0.973906528517172
    };

    private static final double[] HALF_WEIGHTS = {
        0.295524224714753, 0.269266719309996, 0.219086362515982, 0.149451349150581, 0.066671344308688
    };

    /** A smaller share of the normal is not taken from the table, which is right to 2e-6. */
    private static final double LEAST_TABLED = 0.01;

    private final int stages;
    private final double[] gained;
    private final double[] beginRate;
    private final double[] endRate;
    private final double[] leastDays;
    private final double[] mostDays;

    /**
     * @param stages   seen from sticking on, 0 to 3
     * @param gained   G by stage
     * @param leastDays how long before it was entered each end was at least; under 0 if it may have been after
     * @param mostDays  how long before at most
     */
    UnseenEnds(
            int stages, double[] gained, double[] beginRate, double[] endRate, double[] leastDays, double[] mostDays) {
        this.stages = stages;
        this.gained = gained;
        this.beginRate = beginRate;
        this.endRate = endRate;
        this.leastDays = leastDays;
        this.mostDays = mostDays;
    }

    int stages() {
        return stages;
    }

    /** ln of the days, multiplied, within which the ends are known to lie. */
    double logWindow() {
        double sum = 0;
        for (int k = 0; k < stages; k++) {
            sum += Math.log(mostDays[k] - leastDays[k]);
        }
        return sum;
    }

    /**
     * @param logMass    ln of how likely what was seen is
     * @param mean       of y; of stages that were not seen 0
     * @param covariance of y; of stages that were not seen 1 by itself
     * @param unseenDays mean of u by stage
     * @param variance   of u
     */
    record Moments(double logMass, double[] mean, double[][] covariance, double[] unseenDays, double[] variance) {}

    /** With y normal before; null if that leaves what was seen no chance. */
    @Nullable
    Moments after(double[] mean, double[][] covariance) {
        Sum sum = new Sum(mean, covariance);
        sum.stage(0, 0, 1);
        return sum.moments();
    }

    private final class Sum {
        private final double[] mean;
        private final double[][] covariance;
        private final double[] y = new double[Matrix3.N];
        private final double[] u = new double[Matrix3.N];
        private double mass;
        private final double[] first = new double[Matrix3.N];
        private final double[][] second = Matrix3.zero();
        private final double[] days = new double[Matrix3.N];
        private final double[] squareDays = new double[Matrix3.N];

        Sum(double[] mean, double[][] covariance) {
            this.mean = mean;
            this.covariance = covariance;
        }

        /** Mean of y of a stage once those before are known. */
        private double expected(int k) {
            if (k == 0) {
                return mean[0];
            }
            if (k == 1) {
                return mean[1] + covariance[1][0] / covariance[0][0] * (y[0] - mean[0]);
            }
            double determinant = covariance[0][0] * covariance[1][1] - covariance[0][1] * covariance[0][1];
            double of0 = (covariance[2][0] * covariance[1][1] - covariance[2][1] * covariance[0][1]) / determinant;
            double of1 = (covariance[2][1] * covariance[0][0] - covariance[2][0] * covariance[0][1]) / determinant;
            return mean[2] + of0 * (y[0] - mean[0]) + of1 * (y[1] - mean[1]);
        }

        private double variance(int k) {
            if (k == 0) {
                return covariance[0][0];
            }
            double upper = covariance[0][0] * covariance[1][1] - covariance[0][1] * covariance[0][1];
            return k == 1 ? upper / covariance[0][0] : Matrix3.determinant(covariance) / upper;
        }

        /** @param begun days that the stage began before that was seen */
        void stage(int k, double begun, double weight) {
            double whole = gained[k] + beginRate[k] * begun;
            double least = leastDays[k];
            double most = Math.min(mostDays[k], (whole - LEAST_DAYS) / endRate[k]);
            if (most <= least) {
                return;
            }
            double at = expected(k);
            double sd = Math.sqrt(variance(k));
            if (k == stages - 1) {
                last(k, whole, least, most, at, sd, weight);
                return;
            }
            double from = Math.max(least, (whole - Math.exp(at + REACH_SD * sd)) / endRate[k]);
            double to = Math.min(most, (whole - Math.exp(at - REACH_SD * sd)) / endRate[k]);
            if (to <= from) { // wherever it ended, the batch is odd
                from = least;
                to = most;
            }
            for (int i = 0; i < 2 * HALF_NODES.length; i++) {
                double node = i < HALF_NODES.length ? -HALF_NODES[i] : HALF_NODES[i - HALF_NODES.length];
                u[k] = (from + to + (to - from) * node) / 2;
                double took = whole - endRate[k] * u[k];
                y[k] = Math.log(took);
                double z = (y[k] - at) / sd;
                double density = Math.exp(-z * z / 2) / (sd * ROOT_2PI) * endRate[k] / took;
                double part = HALF_WEIGHTS[i % HALF_NODES.length] * (to - from) / 2;
                stage(k + 1, u[k], weight * part * density);
            }
        }

        private void last(int k, double whole, double least, double most, double at, double sd, double weight) {
            double low = (Math.log(whole - endRate[k] * most) - at) / sd;
            double high = (Math.log(whole - endRate[k] * least) - at) / sd;
            double share = NormalShare.below(high) - NormalShare.below(low);
            if (share < LEAST_TABLED) {
                share = NORMAL.probability(low, high);
            }
            if (!(share > 0)) {
                return;
            }
            double middle = (low + high) / 2;
            double z = middle;
            double square = middle * middle;
            if (high - low > NARROW) {
                double below = Math.exp(-low * low / 2) / ROOT_2PI;
                double above = Math.exp(-high * high / 2) / ROOT_2PI;
                z = Math.max(low, Math.min(high, (below - above) / share));
                square = Math.max(z * z, 1 + ((low > -40 ? low * below : 0) - high * above) / share);
            }
            y[k] = at + sd * z;
            double spare = sd * sd * (square - z * z);
            double took = Math.exp(y[k] + spare / 2);
            u[k] = (whole - took) / endRate[k];
            add(k, weight * share, spare, took * took * spare / (endRate[k] * endRate[k]));
        }

        private void add(int last, double weight, double spare, double spareDays) {
            mass += weight;
            for (int i = 0; i <= last; i++) {
                first[i] += weight * y[i];
                days[i] += weight * u[i];
                squareDays[i] += weight * u[i] * u[i];
                for (int j = 0; j <= last; j++) {
                    second[i][j] += weight * y[i] * y[j];
                }
            }
            second[last][last] += weight * spare;
            squareDays[last] += weight * spareDays;
        }

        @Nullable
        Moments moments() {
            if (!(mass > 0)) {
                return null;
            }
            double[][] around = Matrix3.of(0, 1);
            double[] variance = new double[Matrix3.N];
            for (int i = 0; i < stages; i++) {
                first[i] /= mass;
                days[i] /= mass;
                variance[i] = Math.max(0, squareDays[i] / mass - days[i] * days[i]);
            }
            for (int i = 0; i < stages; i++) {
                for (int j = 0; j < stages; j++) {
                    around[i][j] = second[i][j] / mass - first[i] * first[j];
                }
            }
            return new Moments(Math.log(mass), first, around, days, variance);
        }
    }
}
