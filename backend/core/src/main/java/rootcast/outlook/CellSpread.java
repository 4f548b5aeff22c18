package rootcast.outlook;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;
import rootcast.crop.CropProfile;
import rootcast.crop.StageProfile;
import rootcast.crop.Variation;

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
 * <p>How far one batch's own cells lie apart is known as far as batches are alike: three factors on the spread, the nodes of a normal
 * distribution of its logarithm with the crop's {@link rootcast.crop.Variation#cellsDiffer} (Gauss-Hermite).
 */
public final class CellSpread {

    /** Of the factors. */
    public static final double[] WEIGHTS = {1.0 / 6, 2.0 / 3, 1.0 / 6};

    /** Number of the factor that is 1. */
    public static final int USUAL = 1;

    /** Were a stage far shorter than the one before, another share of its cells could be through before that ends. */
    private static final double LEAST_OF_STAGE = 0.05;

    private static final double OUTER_NODE = Math.sqrt(3);
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double Z_COMPLETE = quantileOf(Variation.COMPLETE_SHARE);

    private final double ofStage;
    private final double weight;
    private final double[] factors;

    /** Standard normal quantile of the share of cells that are through at x = 1. */
    private final double atEnd;

    private CellSpread(double ofStage, double weight, double[] factors, double atEnd) {
        this.ofStage = ofStage;
        this.weight = weight;
        this.factors = factors;
        this.atEnd = atEnd;
    }

    /** Standard normal quantile of a share of cells. */
    public static double quantileOf(double share) {
        return NORMAL.inverseCumulativeProbability(share);
    }

    private static double[] factors(double differ) {
        return new double[] {Math.exp(-differ * OUTER_NODE), 1, Math.exp(differ * OUTER_NODE)};
    }

    /** By stage, nine cells in ten being through at the end of each. */
    public static CellSpread[] ofStages(CropProfile profile) {
        double[] days = stated(profile);
        CellSpread[] spreads = new CellSpread[days.length];
        double[] factors = factors(profile.variation().cellsDiffer());
        double all = 0;
        double squares = 0;
        for (int stage = 0; stage < days.length; stage++) {
            all += days[stage];
            squares += days[stage] * days[stage];
            spreads[stage] = new CellSpread(Math.sqrt(squares) / days[stage], days[stage] / all, factors, Z_COMPLETE);
        }
        double mean = Arrays.stream(spreads)
                .mapToDouble(CellSpread::ofStage)
                .average()
                .orElseThrow();
        Arrays.setAll(spreads, stage -> spreads[stage].spreading(profile.cellSpread() * spreads[stage].ofStage / mean));
        return spreads;
    }

    private static double[] stated(CropProfile profile) {
        return profile.stages().stream()
                .mapToDouble(StageProfile::daysAtReference)
                .toArray();
    }

    /** The same where a stage ends with another share of its cells through; on the clock since sticking they lie as far apart. */
    public CellSpread ending(double quantileAtEnd) {
        return new CellSpread(ofStage, weight, factors, quantileAtEnd);
    }

    /** Standard deviation of ln(spread) between batches. */
    public double logDiffer() {
        return Math.log(factors[factors.length - 1]) / OUTER_NODE;
    }

    /** The same cells where the stage is another part of the clock since sticking. */
    CellSpread onClock(double partOfClock) {
        return new CellSpread(ofStage * weight / partOfClock, partOfClock, factors, atEnd);
    }

    /** Development x at which as many cells are through as another end of the stage wants. */
    double progressAtEndOf(CellSpread other) {
        double beyond = (other.atEnd - atEnd) * ofStage;
        return beyond == 0 ? 1 : 1 + Math.expm1(beyond * weight) / weight;
    }

    /**
     * Days at reference since sticking at which the stages end, by stage, if they end with other shares of cells through than these do.
     *
     * @param days  by stage, since the end of the one before
     * @param other by stage
     */
    public static double[] daysSinceSticking(double[] days, CellSpread[] spreads, CellSpread[] other) {
        double[] since = new double[days.length];
        double all = 0;
        double before = 0;
        for (int stage = 0; stage < days.length; stage++) {
            all += days[stage];
            double apart = other[stage].atEnd - spreads[stage].atEnd;
            double end = apart == 0 ? all : all * Math.exp(apart * spreads[stage].ofStage * spreads[stage].weight);
            since[stage] = Math.max(end, before + LEAST_OF_STAGE * days[stage]);
            before = since[stage];
        }
        return since;
    }

    /** Standard deviation of a cell's time at the end of the stage, as a share of the stage's days. */
    public double ofStage() {
        return ofStage;
    }

    public CellSpread spreading(double share) {
        return new CellSpread(share, weight, factors, atEnd);
    }

    /** Whether batches do not differ in it. */
    public boolean isAlike() {
        return factors[0] == factors[2];
    }

    /** @param differ standard deviation of ln(spread) between batches */
    public CellSpread differing(double differ) {
        return new CellSpread(ofStage, weight, factors(differ), atEnd);
    }

    /**
     * How far the batch is beyond the stage's end, as a share of the stage; minus infinity where no cell can be through.
     *
     * @param progress x; may be under 0
     */
    public double beyond(double progress) {
        double whole = 1 + weight * (progress - 1);
        return whole > 0 ? Math.log(whole) / weight : Double.NEGATIVE_INFINITY;
    }

    /**
     * Standard normal quantile of the share of cells that are through.
     *
     * @param beyond of {@link #beyond}
     * @param factor number of one of the factors on the spread, which rise with it and have the probabilities {@link #WEIGHTS}
     */
    public double quantile(double beyond, int factor) {
        return beyond / (ofStage * factors[factor]) + atEnd;
    }
}
