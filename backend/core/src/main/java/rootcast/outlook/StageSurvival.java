package rootcast.outlook;

import java.util.Optional;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.numerics.Beta;

/**
 * The share of plants that live through given parts of the three stages, as one Beta.
 *
 * <p>Survival p of a whole stage is Beta(mean · weight, (1 − mean) · weight), one draw for the whole batch. A part u of
 * the stage, by development, is survived with probability p^u, so that parts multiply to the whole: E[p^u] = B(a + u, b)
 * / B(a, b). Stages are independent, and their product is replaced by the Beta with its mean and variance. Given the
 * share, plants live or die independently.
 *
 * <p>Source: Fan 1991, Commun. Statist. Theory Methods 20:4043-4052 (product of Betas by matching moments); Springer
 * and Thompson 1970, SIAM J. Appl. Math. 18:721-737 (the exact distribution). The power of a part is our reading of a constant
 * hazard per reference-day.
 */
final class StageSurvival {

    /** A smaller part is rounding in the curve's look-ups. */
    private static final double LEAST_PART = 1e-9;

    /** From here on fewer than one plant in 1e12 is lost. */
    private static final double ALL_LIVE = 1 - 1e-12;

    /** Below this the moments' own rounding is larger than the spread, and the plants' own chance far larger still. */
    private static final double LEAST_SQUARED_SPREAD = 1e-11;

    private static final double NO_SPREAD_WEIGHT = 1e12;

    private StageSurvival() {}

    /**
     * Survival of the given parts (0 to 1 of each stage, in order); empty if they are nothing, which all survive.
     */
    static Optional<Beta> through(CropProfile profile, double[] parts) {
        double mean = 1;
        double logSquareRatio = 0;
        boolean any = false;
        for (int stage = 0; stage < parts.length; stage++) {
            if (parts[stage] > LEAST_PART) {
                Beta whole = ofStage(profile.of(Stage.GROWING.get(stage)));
                double partMean = whole.powerMoment(parts[stage]);
                mean *= partMean;
                logSquareRatio += Math.log(whole.powerMoment(2 * parts[stage]) / (partMean * partMean));
                any = true;
            }
        }
        return any && mean < ALL_LIVE ? Optional.of(matching(mean, Math.expm1(logSquareRatio))) : Optional.empty();
    }

    /** The mean of the same; 1 if the parts are nothing. */
    static double meanThrough(CropProfile profile, double[] parts) {
        double mean = 1;
        for (int stage = 0; stage < parts.length; stage++) {
            if (parts[stage] > LEAST_PART) {
                mean *= ofStage(profile.of(Stage.GROWING.get(stage))).powerMoment(parts[stage]);
            }
        }
        return mean;
    }

    private static Beta ofStage(StageProfile stage) {
        return Beta.ofMean(stage.survivalMean(), stage.survivalWeight());
    }

    /** The Beta with this mean and variance mean² · squaredSpread. */
    private static Beta matching(double mean, double squaredSpread) {
        return squaredSpread < LEAST_SQUARED_SPREAD
                ? Beta.ofMean(mean, NO_SPREAD_WEIGHT)
                : Beta.ofMean(mean, (1 - mean) / (mean * squaredSpread) - 1);
    }
}
