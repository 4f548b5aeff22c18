package rootcast.learning;

import org.jspecify.annotations.Nullable;
import rootcast.learning.CellLikelihood.Normal;
import rootcast.learning.StageTimes.Given;

/**
 * What is believed of the y of one batch while the crop's parameters are being found.
 *
 * <p>What was seen is precision A and weighted mean h. With prior N(m, P): posterior precision P⁻¹ + A, and of m itself A −
 * A(P⁻¹ + A)⁻¹A. Looks at a stage join A and h as a normal with the moments that they have (expectation propagation).
 */
final class BatchBelief {

    private final Given given;
    private final double[][] seenPrecision;
    private final double[] seenWeighted;

    /** What looks add to the diagonal of A, and to h. */
    private final double[] lookPrecision = new double[Matrix3.N];

    private final double[] lookWeighted = new double[Matrix3.N];
    private final @Nullable Normal[] lastTime = new Normal[Matrix3.N];

    private double[] prior = new double[Matrix3.N];
    private double[][] knownPrecision = Matrix3.zero();
    private double[] knownWeighted = new double[Matrix3.N];
    private double[][] covariance = Matrix3.zero();
    private double[] mean = new double[Matrix3.N];
    private double weight = 1;

    BatchBelief(Given given) {
        this.given = given;
        this.seenPrecision = SeenDensity.of(given, Matrix3.zero()).precision();
        this.seenWeighted = Matrix3.times(seenPrecision, given.log());
    }

    Given given() {
        return given;
    }

    /** @param rematch whether to match the looks again; what they say changes little once the rest has converged */
    void update(double[] priorMean, double[][] priorCovariance, double cellSpread, boolean rematch) {
        prior = priorMean;
        weight = given.seenStages() == 0
                ? 1
                : SeenDensity.of(given, priorCovariance).weight(priorMean);
        double[][] priorPrecision = Matrix3.inverse(priorCovariance);
        double[] priorWeighted = Matrix3.times(priorPrecision, priorMean);
        posterior(priorPrecision, priorWeighted);
        for (int k = 0; k < Matrix3.N && rematch; k++) {
            if (!given.looks().get(k).isEmpty()) {
                look(k, cellSpread);
                posterior(priorPrecision, priorWeighted);
            }
        }
    }

    private void posterior(double[][] priorPrecision, double[] priorWeighted) {
        knownPrecision = Matrix3.zero();
        knownWeighted = Matrix3.plus(seenWeighted, 1, lookWeighted);
        for (int k = 0; k < Matrix3.N; k++) {
            knownPrecision[k] = seenPrecision[k].clone();
            knownPrecision[k][k] += lookPrecision[k];
        }
        covariance = Matrix3.inverse(Matrix3.plus(priorPrecision, 1, knownPrecision));
        mean = Matrix3.times(covariance, Matrix3.plus(priorWeighted, 1, knownWeighted));
    }

    private void look(int stage, double cellSpread) {
        double precision = 1 / covariance[stage][stage];
        double apart = precision - lookPrecision[stage];
        double apartWeighted = mean[stage] * precision - lookWeighted[stage];
        Normal without = new Normal(apartWeighted / apart, 1 / apart);
        Normal with = CellLikelihood.after(without, given.looks().get(stage), cellSpread, lastTime[stage]);
        lastTime[stage] = with;
        double told = 1 / with.variance() - 1 / without.variance();
        if (told <= 0) { // a look of another bench: it tells nothing, or less
            lookPrecision[stage] = 0;
            lookWeighted[stage] = 0;
            return;
        }
        double at = (with.mean() / with.variance() - without.mean() / without.variance()) / told;
        double beginVariance = given.looks().get(stage).get(0).beginVariance();
        lookPrecision[stage] = 1 / (1 / told + beginVariance);
        lookWeighted[stage] = lookPrecision[stage] * at;
    }

    /** How much the batch counts, 1 unless it is odd. */
    double weight() {
        return given.tellsNothing() ? 0 : weight;
    }

    double[][] meanPrecision() {
        return Matrix3.plus(
                knownPrecision, -1, Matrix3.times(knownPrecision, Matrix3.times(covariance, knownPrecision)));
    }

    double[] meanWeighted() {
        return Matrix3.plus(knownWeighted, -1, Matrix3.times(knownPrecision, Matrix3.times(covariance, knownWeighted)));
    }

    /** Mean of y less its prior mean. */
    double[] deviation() {
        return Matrix3.plus(mean, -1, prior);
    }

    /** Covariance of that, the prior mean itself known up to a covariance. */
    double[][] deviationCovariance(double[][] ofPriorMean) {
        double[][] pull = Matrix3.times(covariance, knownPrecision);
        double[][] pulled = Matrix3.times(pull, Matrix3.times(ofPriorMean, Matrix3.times(knownPrecision, covariance)));
        return Matrix3.plus(covariance, 1, pulled);
    }

    Normal of(int stage) {
        return new Normal(mean[stage], covariance[stage][stage]);
    }
}
