package rootcast.learning;

import java.util.Arrays;
import java.util.List;
import org.apache.commons.statistics.distribution.TDistribution;
import rootcast.crop.CropProfile;
import rootcast.crop.Variation;
import rootcast.outlook.CellSpread;

/**
 * The spreads between batches (τ), between stages of a batch (σ) and between cells, with their priors.
 *
 * <p>τ² and σ² have the prior of {@value #BATCHES_WORTH} batches that spread as the profile says and {@value #STAGES_WORTH} stages
 * that spread by {@value #USUAL_STAGE_SPREAD}; ln of a stage's cell
 * spread is normal around the profile's, which grows from stage to stage ({@link CellSpread}), with {@value #CELL_LOG_SPREAD}. How far
 * batches differ in that is half of a normal with the standard deviation that is usual (Gelman 2006, Bayesian Analysis 1:515-534): no batch
 * tells it for sure, so it is the root of the mean square of what is believed of it.
 *
 * <p>τ² and σ² are known from ν batches or stages only, those that were seen exactly counting whole (MacKay 1992, Neural Computation 4:415-447,
 * §4: the squares of 1 − variance after / before). What is foretold with them is Student's t with ν degrees of freedom; the normal with the same 80 %
 * range stands for it, so they are told wider by the square of t₀.₉ / z₀.₉ ({@link #foretoldBatchVariance}).
 */
final class Spreads {

    private static final double BATCHES_WORTH = 4;
    private static final double STAGES_WORTH = 2;

    /** How far a stage of a batch runs from the batch's own rate. Common practice, no source. */
    private static final double USUAL_STAGE_SPREAD = 0.03;

    private static final double CELL_LOG_SPREAD = 0.35;
    private static final int CELL_EVERY = 4;

    /** Standard deviations of ln(cell spread) between batches that are looked at, evenly. */
    private static final double[] DIFFER = {0, 0.075, 0.15, 0.225, 0.3, 0.375, 0.45, 0.525, 0.6};

    private static final double USUAL_DIFFER = Variation.USUAL.cellsDiffer();
    private static final double CELL_STEP = 0.02;
    private static final double WIDE_BATCH_SPREAD = 0.3;
    private static final double LEAST_BATCH_SPREAD = 0.01;
    private static final double LEAST_CELL = 0.02;
    private static final double MOST_CELL = 0.6;

    private final double batchPrior;
    private final CellSpread[] cellPrior;
    private double batchVariance;
    private double stageVariance;
    private CellSpread[] cell;
    private double cellsDiffer;
    private double calledQuantile;
    private double batchFreedom;
    private double stageFreedom;

    Spreads(CropProfile profile) {
        batchPrior = Math.max(profile.rateSpread(), LEAST_BATCH_SPREAD);
        cellPrior = CellSpread.ofStages(profile);
        cell = cellPrior.clone();
        reset();
    }

    /**
     * Wide to begin with: a profile that is far out must not make every look seem to be of another bench. Cells of all batches alike: else
     * each batch would be one of those that differ before the crop's own spread is found.
     */
    void reset() {
        batchVariance = Math.max(batchPrior * batchPrior, WIDE_BATCH_SPREAD * WIDE_BATCH_SPREAD);
        stageVariance = USUAL_STAGE_SPREAD * USUAL_STAGE_SPREAD;
        cell = cellPrior.clone();
        calling(CellSpread.quantileOf(Variation.COMPLETE_SHARE));
        differ(0);
    }

    /** @param quantile standard normal, of the share of cells with which a stage is called complete */
    void calling(double quantile) {
        calledQuantile = quantile;
        Arrays.setAll(cell, k -> cell[k].ending(quantile));
    }

    double calledQuantile() {
        return calledQuantile;
    }

    private void differ(double differ) {
        cellsDiffer = differ;
        Arrays.setAll(cell, k -> cell[k].differing(differ));
    }

    double cellsDiffer() {
        return cellsDiffer;
    }

    double batch() {
        return Math.sqrt(batchVariance);
    }

    double stage() {
        return Math.sqrt(stageVariance);
    }

    /** Of the crop: the mean of its stages. */
    double cell() {
        return Arrays.stream(cell).mapToDouble(CellSpread::ofStage).average().orElseThrow();
    }

    CellSpread cell(int stage) {
        return cell[stage];
    }

    double sum() {
        return batch() + stage() + cell() + cellsDiffer + calledQuantile;
    }

    /** To be asked for once the rest has about settled. */
    void updateCellsDiffer(List<BatchBelief> batches) {
        double[] logs = new double[DIFFER.length];
        double most = Double.NEGATIVE_INFINITY;
        for (int i = 0; i < DIFFER.length; i++) {
            double apart = DIFFER[i] / USUAL_DIFFER;
            logs[i] = -apart * apart / 2 + (i == 0 ? Math.log(0.5) : 0); // the end of an even grid counts by half
            for (int k = 0; k < Matrix3.N; k++) {
                CellSpread cells = cell[k].differing(DIFFER[i]);
                for (BatchBelief batch : batches) {
                    logs[i] += batch.logEvidence(k, cells);
                }
            }
            most = Math.max(most, logs[i]);
        }
        double whole = 0;
        double squares = 0;
        for (int i = 0; i < DIFFER.length; i++) {
            double likely = Math.exp(logs[i] - most);
            whole += likely;
            squares += likely * DIFFER[i] * DIFFER[i];
        }
        differ(Math.sqrt(squares / whole));
    }

    double[][] covariance() {
        return Matrix3.of(batchVariance, stageVariance);
    }

    double logPrior() {
        double stagePrior = USUAL_STAGE_SPREAD * USUAL_STAGE_SPREAD;
        return -BATCHES_WORTH / 2 * (Math.log(batchVariance) + batchPrior * batchPrior / batchVariance)
                - STAGES_WORTH / 2 * (Math.log(stageVariance) + stagePrior / stageVariance);
    }

    void update(List<BatchBelief> batches, double[][] ofLogDays, int iteration) {
        double share = batchVariance / (stageVariance + Matrix3.N * batchVariance);
        double left = share * stageVariance;
        double batchSum = BATCHES_WORTH * batchPrior * batchPrior;
        double stageSum = STAGES_WORTH * USUAL_STAGE_SPREAD * USUAL_STAGE_SPREAD;
        double weights = 0;
        batchFreedom = BATCHES_WORTH;
        stageFreedom = STAGES_WORTH;
        for (BatchBelief batch : batches) {
            double weight = batch.weight();
            double[] deviation = batch.deviation();
            double[][] covariance = batch.deviationCovariance(ofLogDays);
            double whole = Matrix3.sum(deviation);
            double wholeSquare = whole * whole + Matrix3.sum(covariance);
            double squares = Matrix3.dot(deviation, deviation) + covariance[0][0] + covariance[1][1] + covariance[2][2];
            batchSum += weight * (share * share * wholeSquare + left);
            stageSum += weight * (squares - (2 * share - Matrix3.N * share * share) * wholeSquare + Matrix3.N * left);
            weights += weight;
            double ofMean = Matrix3.sum(covariance) / Matrix3.N;
            double trace = covariance[0][0] + covariance[1][1] + covariance[2][2];
            double mean = seen(ofMean, Matrix3.N * batchVariance + stageVariance);
            double own = seen((trace - ofMean) / (Matrix3.N - 1), stageVariance);
            batchFreedom += weight * mean * mean;
            stageFreedom += weight * (Matrix3.N - 1) * own * own;
        }
        batchVariance = batchSum / (BATCHES_WORTH + weights);
        stageVariance = stageSum / (STAGES_WORTH + Matrix3.N * weights);
        for (int k = 0; k < Matrix3.N && iteration % CELL_EVERY == CELL_EVERY - 1; k++) {
            cell[k] = cell[k].spreading(likeliestCell(k, batches));
        }
    }

    /** How much of a variance has gone. */
    private static double seen(double after, double before) {
        return Math.max(0, 1 - after / before);
    }

    /** Variance between batches for what is to be foretold. */
    double foretoldBatchVariance() {
        return batchVariance * asWide(batchFreedom);
    }

    /** Variance between the stages of a batch for what is to be foretold. */
    double foretoldStageVariance() {
        return stageVariance * asWide(stageFreedom);
    }

    /** By how much a variance that so many tell is to be wider for a normal to have the 80 % range of Student's t. */
    static double asWide(double freedom) {
        double ratio = TDistribution.of(freedom).inverseCumulativeProbability(0.9) / CellSpread.quantileOf(0.9);
        return ratio * ratio;
    }

    /** Uphill in steps of {@value #CELL_STEP} in ln; the next update goes on from here. */
    private double likeliestCell(int stage, List<BatchBelief> batches) {
        double now = cell[stage].ofStage();
        if (batches.stream().allMatch(batch -> batch.looks().get(stage).isEmpty())) {
            return now;
        }
        double here = value(stage, now, batches);
        double up = Math.min(now * Math.exp(CELL_STEP), MOST_CELL);
        double down = Math.max(now * Math.exp(-CELL_STEP), LEAST_CELL);
        double above = value(stage, up, batches);
        double below = value(stage, down, batches);
        double curve = above - 2 * here + below;
        if (curve < 0) {
            double move = (below - above) / (2 * curve);
            return Math.max(
                    LEAST_CELL, Math.min(MOST_CELL, now * Math.exp(CELL_STEP * Math.max(-10, Math.min(10, move)))));
        }
        return above > below ? up : down;
    }

    private double value(int stage, double cellSpread, List<BatchBelief> batches) {
        double apart = Math.log(cellSpread / cellPrior[stage].ofStage()) / CELL_LOG_SPREAD;
        double sum = -apart * apart / 2;
        CellSpread cells = cell[stage].spreading(cellSpread);
        for (BatchBelief batch : batches) {
            if (!batch.looks().get(stage).isEmpty()) {
                sum += CellLikelihood.expectedLog(batch.of(stage), batch.looks().get(stage), cells);
            }
        }
        return sum;
    }
}
