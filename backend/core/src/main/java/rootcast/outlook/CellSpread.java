package rootcast.outlook;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;
import rootcast.crop.CropProfile;
import rootcast.crop.StageProfile;

/**
 * How far the cells of one batch lie apart when a stage ends, on the clock that has run since sticking.
 *
 * <p>A cell begins a stage when it is through with the one before, not when nine in ten are, so its lead or lag goes with
 * it, and its time to the end of stage k is a sum of k times. With independent times of equal relative spread s that sum
 * spreads by s · √(d₁² + … + d_k²), which of the stage alone, {@code ofStage}, is that over d_k. The sum is taken as log-normal: with x the
 * development that the batch has of the stage, 1 where nine living cells in ten are through, a cell is through with
 * probability Φ(ln(1 + w(x − 1)) / (w · ofStage) + z₀.₉), w = d_k / (d₁ + … + d_k). So the first cells are through before the
 * batch's stage has begun, and the last lie no further behind than the first lie ahead by a like factor of all their time.
 *
 * <p>The profile's cell spread is one figure for all stages; it is taken as the mean of the three.
 *
 * <p>Source: variances of independent times add; a sum of log-normals taken as log-normal, Fenton 1960, IRE Trans. Commun. Syst.
 * 8:57-67. That stages share one relative spread is our assumption.
 *
 * @param ofStage standard deviation of a cell's time at the end of the stage, as a share of the stage's days
 * @param weight  w, the stage's days as a share of all since sticking
 */
public record CellSpread(double ofStage, double weight) {

    /**
     * How far one batch's cells may differ from the crop's cell spread: factors at the three nodes of a normal distribution
     * of the logarithm with standard deviation 0.3 (Gauss-Hermite). Common practice, no source.
     */
    static final double[] FACTORS = {Math.exp(-0.3 * Math.sqrt(3)), 1, Math.exp(0.3 * Math.sqrt(3))};

    static final double[] WEIGHTS = {1.0 / 6, 2.0 / 3, 1.0 / 6};

    private static final double Z_COMPLETE = NormalDistribution.of(0, 1).inverseCumulativeProbability(0.9);

    /** By stage. */
    public static CellSpread[] ofStages(CropProfile profile) {
        double[] days = profile.stages().stream()
                .mapToDouble(StageProfile::daysAtReference)
                .toArray();
        CellSpread[] spreads = new CellSpread[days.length];
        double all = 0;
        double squares = 0;
        for (int stage = 0; stage < days.length; stage++) {
            all += days[stage];
            squares += days[stage] * days[stage];
            spreads[stage] = new CellSpread(Math.sqrt(squares) / days[stage], days[stage] / all);
        }
        double mean = Arrays.stream(spreads)
                .mapToDouble(CellSpread::ofStage)
                .average()
                .orElseThrow();
        Arrays.setAll(spreads, stage -> spreads[stage].spreading(profile.cellSpread() * spreads[stage].ofStage / mean));
        return spreads;
    }

    public CellSpread spreading(double share) {
        return new CellSpread(share, weight);
    }

    /**
     * How far the batch is beyond the stage's end, as a share of the stage; minus infinity where no cell can be through.
     *
     * @param progress x; may be under 0
     */
    double beyond(double progress) {
        double whole = 1 + weight * (progress - 1);
        return whole > 0 ? Math.log(whole) / weight : Double.NEGATIVE_INFINITY;
    }

    /**
     * Standard normal quantile of the share of cells that are through.
     *
     * @param progress x; may be under 0
     */
    public double quantile(double progress) {
        return quantileAt(beyond(progress), 1);
    }

    /**
     * The same where it is known how far beyond.
     *
     * @param factor on how far this batch's cells lie apart
     */
    double quantileAt(double beyond, double factor) {
        return beyond / (ofStage * factor) + Z_COMPLETE;
    }
}
