package rootcast.learning;

import java.util.Arrays;
import rootcast.learning.StageTimes.Given;

/**
 * How likely the stages of one batch as seen are for given means of y, parameters of the crop known.
 *
 * <p>Normal with the covariance of batch, stage and moments together; beyond what 999 of 1 000 batches keep to, odd
 * batches count by the logarithm of how odd they are, which goes with the weight {@link #weight}.
 */
final class SeenDensity {

    /** 99.9 % points of chi-square with 1 to 3 degrees of freedom (tables). */
    private static final double[] USUAL = {0, 10.828, 13.816, 16.266};

    private final Given given;
    private final double[][] precision;
    private final double[][] seenPrecision;
    private final double logDeterminant;
    private final double usual;

    private SeenDensity(Given given, double[][] covariance) {
        this.given = given;
        this.precision = Matrix3.inverse(covariance);
        this.seenPrecision = seen(precision, given.isSeen());
        this.logDeterminant = Math.log(Matrix3.determinant(covariance));
        this.usual = USUAL[given.seenStages()];
    }

    /** @param prior covariance of the batch's y */
    static SeenDensity of(Given given, double[][] prior) {
        double[][] covariance = Matrix3.zero();
        for (int i = 0; i < Matrix3.N; i++) {
            for (int j = 0; j < Matrix3.N; j++) {
                boolean both = given.isSeen()[i] && given.isSeen()[j];
                covariance[i][j] = both ? given.error()[i][j] + prior[i][j] : i == j ? 1 : 0;
            }
        }
        return new SeenDensity(given, covariance);
    }

    private double distance(double[] mean) {
        double[] rest = new double[Matrix3.N];
        for (int k = 0; k < Matrix3.N; k++) {
            rest[k] = given.isSeen()[k] ? given.log()[k] - mean[k] : 0;
        }
        return Matrix3.dot(rest, Matrix3.times(precision, rest));
    }

    double weight(double[] mean) {
        double distance = distance(mean);
        return distance <= usual ? 1 : usual / distance;
    }

    double log(double[] mean) {
        double distance = distance(mean);
        double counted = distance <= usual ? distance : usual * (1 + Math.log(distance / usual));
        return given.logSlope() - logDeterminant / 2 - counted / 2;
    }

    /** Precision of the seen stages, zero for others. */
    double[][] precision() {
        return seenPrecision;
    }

    private static double[][] seen(double[][] precision, boolean[] isSeen) {
        double[][] seen = Matrix3.zero();
        for (int i = 0; i < Matrix3.N; i++) {
            for (int j = 0; j < Matrix3.N; j++) {
                seen[i][j] = isSeen[i] && isSeen[j] ? precision[i][j] : 0;
            }
        }
        return seen;
    }

    /** Precision × what was seen less an effect on all stages. */
    double[] weighted(double effect) {
        double[] log = new double[Matrix3.N];
        Arrays.setAll(log, k -> given.isSeen()[k] ? given.log()[k] - effect : 0);
        return Matrix3.times(seenPrecision, log);
    }
}
