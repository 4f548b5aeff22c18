package rootcast.learning;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.learning.CellLikelihood.Normal;
import rootcast.learning.StageTimes.Given;
import rootcast.learning.StageTimes.LookedAt;
import rootcast.outlook.CellSpread;

/**
 * What is believed of the y of one batch while the crop's parameters are being found.
 *
 * <p>What was seen is precision A and weighted mean h. With prior N(m, P): posterior precision P⁻¹ + A, and of m itself A −
 * A(P⁻¹ + A)⁻¹A. The ends that nobody saw, and looks at a stage, are in A and h as the normal with the moments that they have
 * (expectation propagation).
 */
final class BatchBelief {

    private final Given given;
    private double[][] seenPrecision;
    private double[] seenWeighted;
    private List<List<LookedAt>> looks;

    /** What looks add to the diagonal of A, and to h. */
    private final double[] lookPrecision = new double[Matrix3.N];

    private final double[] lookWeighted = new double[Matrix3.N];
    private final @Nullable Normal[] lastTime = new Normal[Matrix3.N];
    private final @Nullable Normal[] withoutLooks = new Normal[Matrix3.N];

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
        this.looks = given.looks();
    }

    Given given() {
        return given;
    }

    /** By stage, with the begins as they are believed. */
    List<List<LookedAt>> looks() {
        return looks;
    }

    /** @param rematch whether to match the looks again; what they say changes little once the rest has converged */
    void update(double[] priorMean, double[][] priorCovariance, Spreads spreads, boolean rematch) {
        prior = priorMean;
        weight = given.seenStages() == 0
                ? 1
                : SeenDensity.of(given, priorCovariance).weight(priorMean);
        double[][] priorPrecision = Matrix3.inverse(priorCovariance);
        double[] priorWeighted = Matrix3.times(priorPrecision, priorMean);
        posterior(priorPrecision, priorWeighted);
        if (rematch && given.ends().stages() > 0) {
            ends(priorPrecision, priorWeighted);
            posterior(priorPrecision, priorWeighted);
        }
        for (int k = 0; k < Matrix3.N && rematch; k++) {
            if (!looks.get(k).isEmpty()) {
                look(k, spreads.cell(k));
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

    /** Looks at what the ends say beside all the rest; what it said last time stays if that is not a normal. */
    private void ends(double[][] priorPrecision, double[] priorWeighted) {
        int stages = given.ends().stages();
        double[][] precision = Matrix3.plus(priorPrecision, 1, Matrix3.zero());
        for (int k = 0; k < Matrix3.N; k++) {
            precision[k][k] += lookPrecision[k];
        }
        double[][] without = Matrix3.inverse(precision);
        double[] meanWithout = Matrix3.times(without, Matrix3.plus(priorWeighted, 1, lookWeighted));
        UnseenEnds.Moments with = given.ends().after(meanWithout, without);
        if (with == null) {
            return;
        }
        double[][] precisionWithout = Matrix3.inverse(firstOf(without, stages));
        double[][] precisionWith = Matrix3.inverse(with.covariance());
        double[][] told = firstOf(Matrix3.plus(precisionWith, -1, precisionWithout), stages);
        looks = given.looks(with.unseenDays(), with.variance());
        if (Matrix3.isPositive(told)) {
            double[] before = new double[Matrix3.N];
            System.arraycopy(meanWithout, 0, before, 0, stages);
            seenPrecision = Matrix3.plus(told, -1, firstOf(Matrix3.zero(), stages));
            seenWeighted = Matrix3.plus(
                    Matrix3.times(precisionWith, with.mean()), -1, Matrix3.times(precisionWithout, before));
        }
    }

    /** Of so many stages, 1 by itself for the others. */
    private static double[][] firstOf(double[][] m, int stages) {
        double[][] first = Matrix3.zero();
        for (int i = 0; i < Matrix3.N; i++) {
            for (int j = 0; j < Matrix3.N; j++) {
                first[i][j] = i < stages && j < stages ? m[i][j] : i == j ? 1 : 0;
            }
        }
        return first;
    }

    private void look(int stage, CellSpread cells) {
        double precision = 1 / covariance[stage][stage];
        double apart = precision - lookPrecision[stage];
        double apartWeighted = mean[stage] * precision - lookWeighted[stage];
        Normal without = new Normal(apartWeighted / apart, 1 / apart);
        Normal with = CellLikelihood.after(without, looks.get(stage), cells, lastTime[stage]);
        lastTime[stage] = with;
        withoutLooks[stage] = without;
        double told = 1 / with.variance() - 1 / without.variance();
        if (told <= 0) { // a look of another bench: it tells nothing, or less
            lookPrecision[stage] = 0;
            lookWeighted[stage] = 0;
            return;
        }
        double at = (with.mean() / with.variance() - without.mean() / without.variance()) / told;
        double beginVariance = looks.get(stage).get(0).beginVariance();
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

    /** ln of how likely the looks at a stage are beside all the rest that is known; 0 where there are none. */
    double logEvidence(int stage, CellSpread cells) {
        Normal without = withoutLooks[stage];
        Normal with = lastTime[stage];
        return without == null || with == null ? 0 : CellLikelihood.logEvidence(without, looks.get(stage), cells, with);
    }

    Normal of(int stage) {
        return new Normal(mean[stage], covariance[stage][stage]);
    }
}
