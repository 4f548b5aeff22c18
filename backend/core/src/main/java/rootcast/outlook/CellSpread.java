package rootcast.outlook;

import java.util.Arrays;
import rootcast.crop.CropProfile;
import rootcast.crop.StageProfile;

/**
 * How far the cells of one batch lie apart when a stage ends, relative to that stage.
 *
 * <p>A cell begins a stage when it is through with the one before, not when nine in ten are, so its lead or lag goes with
 * it: with independent times of equal relative spread the spread at the end of stage k is √(d₁² + … + d_k²) / d_k times
 * that of one stage, d being the stages' days. The profile's cell spread is one figure for all stages; it is taken as the
 * mean of the three.
 *
 * <p>Source: variances of independent times add; that stages share one relative spread is our assumption.
 */
public final class CellSpread {

    /**
     * How far one batch's cells may differ from the crop's cell spread: factors at the three nodes of a normal distribution
     * of the logarithm with standard deviation 0.3 (Gauss-Hermite). Common practice, no source.
     */
    static final double[] FACTORS = {Math.exp(-0.3 * Math.sqrt(3)), 1, Math.exp(0.3 * Math.sqrt(3))};

    static final double[] WEIGHTS = {1.0 / 6, 2.0 / 3, 1.0 / 6};

    private CellSpread() {}

    /** Standard deviation of ln(a cell's time) by stage. */
    public static double[] ofStages(CropProfile profile) {
        double[] spread = new double[StagePath.STAGES];
        double squares = 0;
        for (int stage = 0; stage < spread.length; stage++) {
            StageProfile ofStage = profile.stages().get(stage);
            squares += ofStage.daysAtReference() * ofStage.daysAtReference();
            spread[stage] = Math.sqrt(squares) / ofStage.daysAtReference();
        }
        double mean = Arrays.stream(spread).average().orElseThrow();
        Arrays.setAll(spread, stage -> profile.cellSpread() * spread[stage] / mean);
        return spread;
    }
}
