package rootcast.learning;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.Variation;
import rootcast.learning.StageTimes.Given;
import rootcast.outlook.CellSpread;

/**
 * Days, spreads and the rates of varieties and sites from all batches of a crop at once.
 *
 * <p>With y = ln(reference-days of a stage in a batch): y = θ(stage) + v(variety) + s(site) + μ(batch) + ε(batch, stage),
 * normal with variances τ² for μ and σ² for ε. θ has the prior a normal around ln of the profile's days. τ, σ
 * and the cell spread are found by expectation and maximisation, each with a prior worth a few batches; v and s are
 * shrunk to the crop; what looks say of y is matched by its first two moments (expectation propagation); how far apart
 * rounds are, where no look tells, is the likeliest of {@link #ROUNDS_DAYS}; a stage ends when it is called so, {@link CalledShare}. A batch that no parameters explain weighs
 * less, as Huber has it.
 *
 * <p>Source: Laird and Ware 1982, Biometrics 38:963-974 (mixed model by EM); Minka 2001, UAI 17:362-369 (moments);
 * Huber 1981, Robust Statistics, ch. 7 (weights); Morris 1983 (shrinking, {@link rootcast.numerics.Shrinkage}).
 */
final class RateFit {

    /** Variance of ln(days) around the profile's before any batch is seen, half of it alike in all stages: as in the outlook. */
    private static final double HALF_OF_DAYS_VARIANCE = Variation.USUAL.daysDoubt() * Variation.USUAL.daysDoubt() / 2;

    private static final double[][] DAYS_PRECISION =
            Matrix3.inverse(Matrix3.of(HALF_OF_DAYS_VARIANCE, HALF_OF_DAYS_VARIANCE));

    /** From entered within the hour to a week and a half. */
    private static final double[] ROUNDS_DAYS = {0.05, 0.25, 0.5, 1, 1.5, 2, 3, 4.5, 7, 10};

    /** Common practice: rounds every two days, two businesses in three between daily and twice a week; no source. */
    private static final double USUAL_ROUNDS_DAYS = Variation.USUAL.roundsDays();

    private static final double ROUNDS_LOG_SPREAD = 0.7;

    /** A batch that no parameters explain counts as so unlikely and no more. */
    private static final double LEAST_LOG_MASS = -30;

    private static final double[] ONES = {1, 1, 1};

    private static final int MOST_ITERATIONS = 200;
    private static final int TRIAL_ITERATIONS = 20;
    private static final int CELLS_DIFFER_EVERY = 20;
    private static final int LOOK_EVERY = 4;
    private static final int LIKELIEST_PASSES = 3;
    private static final double CONVERGED = 1e-6;

    private final double[] statedDays;
    private final CellSpread[] statedCells;
    private final double[] priorLogDays = new double[Matrix3.N];
    private final List<BatchRecord> records;
    private final List<StageTimes> times;
    private final RateGroups varieties;
    private final RateGroups sites;
    private final Spreads spreads;

    private double roundsDays;
    private List<BatchBelief> batches = List.of();
    private double[] logDays = new double[Matrix3.N];
    private double[][] covariance = Matrix3.zero();

    /**
     * @param logDays    ln(days at reference) by stage, from one call to the next
     * @param covariance of {@code logDays}
     * @param rates      of varieties and sites that were told from the crop
     */
    record Fitted(
            double[] logDays,
            double[][] covariance,
            double batchSpread,
            double stageSpread,
            double foretoldBatchVariance,
            double foretoldStageVariance,
            double cellSpread,
            double cellsDiffer,
            double calledQuantile,
            double roundsDays,
            Map<String, Double> varietyRates,
            Map<String, Double> siteRates) {

        /** Standard deviation of ln(days). */
        double spreadOf(int stage) {
            return Math.sqrt(covariance[stage][stage]);
        }

        /** Of the stages together. */
        double daysDoubt() {
            return Math.sqrt((covariance[0][0] + covariance[1][1] + covariance[2][2]) / Matrix3.N);
        }
    }

    /** @param records in an order that does not depend on how they came in */
    RateFit(List<BatchRecord> records, CropProfile profile, WarmDays.Rates[] rates) {
        this.records = records;
        this.times =
                records.stream().map(record -> new StageTimes(record, rates)).toList();
        this.varieties =
                new RateGroups(records.stream().map(BatchRecord::variety).toList());
        this.sites = new RateGroups(records.stream().map(BatchRecord::site).toList());
        this.spreads = new Spreads(profile);
        this.statedDays = profile.stages().stream()
                .mapToDouble(StageProfile::daysAtReference)
                .toArray();
        this.statedCells = CellSpread.ofStages(profile);
    }

    Fitted fit() {
        if (times.stream().anyMatch(StageTimes::needsRounds)) {
            double best = Double.NEGATIVE_INFINITY;
            double bestRounds = USUAL_ROUNDS_DAYS;
            for (double rounds : ROUNDS_DAYS) {
                begin(rounds);
                run(TRIAL_ITERATIONS);
                double apart = Math.log(rounds / USUAL_ROUNDS_DAYS) / ROUNDS_LOG_SPREAD;
                double value = logLikelihood() - apart * apart / 2;
                if (value > best) {
                    best = value;
                    bestRounds = rounds;
                }
            }
            begin(bestRounds);
        } else {
            begin(USUAL_ROUNDS_DAYS);
        }
        run(MOST_ITERATIONS);
        return fitted();
    }

    private Fitted fitted() {
        double[][] all = covariance;
        double common = varieties.varianceOfMean() + sites.varianceOfMean();
        return new Fitted(
                logDays,
                Matrix3.plus(all, common, Matrix3.of(1, 0)),
                spreads.batch(),
                spreads.stage(),
                spreads.foretoldBatchVariance(),
                spreads.foretoldStageVariance(),
                spreads.cell(),
                spreads.cellsDiffer(),
                spreads.calledQuantile(),
                roundsDays,
                varieties.rates(),
                sites.rates());
    }

    private void begin(double rounds) {
        roundsDays = rounds;
        batches =
                times.stream().map(time -> new BatchBelief(time.given(rounds))).toList();
        spreads.reset();
        varieties.reset();
        sites.reset();
        covariance = Matrix3.zero();
        Arrays.setAll(priorLogDays, k -> Math.log(statedDays[k]));
        Arrays.setAll(logDays, k -> startOf(k));
        calling();
    }

    /** How complete a stage is when it is called so, and what the stated days come to until then. */
    private void calling() {
        var share = new CalledShare();
        for (int i = 0; i < batches.size(); i++) {
            for (int k = 0; k < Matrix3.N; k++) {
                var before = new CellLikelihood.Normal(logDays[k] + effect(i), spreads.covariance()[k][k]);
                share.add(batches.get(i).looks().get(k), before, spreads.cell(k));
            }
        }
        spreads.calling(share.quantile());
        CellSpread[] called = statedCells.clone();
        Arrays.setAll(called, k -> called[k].ending(spreads.calledQuantile()));
        double[] since = CellSpread.daysSinceSticking(statedDays, statedCells, called);
        Arrays.setAll(priorLogDays, k -> Math.log(since[k] - (k == 0 ? 0 : since[k - 1])));
    }

    /** The median over batches: the profile may be far out, and then every batch would look odd. */
    private double startOf(int stage) {
        double[] logs = batches.stream()
                .map(BatchBelief::given)
                .filter(given -> given.isSeen()[stage])
                .mapToDouble(given -> given.log()[stage])
                .sorted()
                .toArray();
        return logs.length < Matrix3.N ? priorLogDays[stage] : logs[logs.length / 2];
    }

    private void run(int mostIterations) {
        for (int iteration = 0; iteration < mostIterations; iteration++) {
            double[] before = logDays.clone();
            double spreadBefore = spreads.sum();
            step(iteration);
            if (iteration >= TRIAL_ITERATIONS && iteration % CELLS_DIFFER_EVERY == 0) {
                spreads.updateCellsDiffer(batches);
                calling();
            }
            double change = Math.abs(spreads.sum() - spreadBefore);
            for (int k = 0; k < Matrix3.N; k++) {
                change = Math.max(change, Math.abs(logDays[k] - before[k]));
            }
            if (change < CONVERGED && iteration >= Math.min(mostIterations - 1, TRIAL_ITERATIONS)) {
                return;
            }
        }
    }

    private void step(int iteration) {
        double[][] prior = spreads.covariance();
        double[][] precision = DAYS_PRECISION;
        double[] weighted = Matrix3.times(precision, priorLogDays);
        boolean lookAnew = iteration < LOOK_EVERY || iteration % LOOK_EVERY == 0;
        for (int i = 0; i < batches.size(); i++) {
            BatchBelief batch = batches.get(i);
            double effect = effect(i);
            batch.update(Matrix3.plus(logDays, effect, ONES), prior, spreads, lookAnew);
            precision = Matrix3.plus(precision, batch.weight(), batch.meanPrecision());
            double[] about = Matrix3.plus(batch.meanWeighted(), -effect, Matrix3.times(batch.meanPrecision(), ONES));
            weighted = Matrix3.plus(weighted, batch.weight(), about);
        }
        covariance = Matrix3.inverse(precision);
        logDays = Matrix3.times(covariance, weighted);
        varieties.shrink(batches, logDays, this::siteEffect);
        sites.shrink(batches, logDays, varieties::effect);
        spreads.update(batches, covariance, iteration);
    }

    private double effect(int batch) {
        return varieties.effect(batch) + siteEffect(batch);
    }

    private double siteEffect(int batch) {
        return sites.effect(batch);
    }

    /** ln of the likelihood of the moments at which ends were entered, θ integrated out. */
    private double logLikelihood() {
        double sum = spreads.logPrior() + Math.log(Matrix3.determinant(covariance)) / 2;
        double[] apart = Matrix3.plus(logDays, -1, priorLogDays);
        sum -= Matrix3.dot(apart, Matrix3.times(DAYS_PRECISION, apart)) / 2;
        double[][] prior = spreads.covariance();
        for (int i = 0; i < batches.size(); i++) {
            sum += logLikelihood(batches.get(i).given(), Matrix3.plus(logDays, effect(i), ONES), prior);
        }
        return sum;
    }

    /** Whoever comes every so many days meets a moment between two rounds with the probability of that time over those days. */
    private double logLikelihood(Given given, double[] mean, double[][] prior) {
        if (given.ends().stages() == 0) {
            return 0;
        }
        UnseenEnds.Moments moments = given.ends().after(mean, prior);
        double log = moments == null ? LEAST_LOG_MASS : Math.max(LEAST_LOG_MASS, moments.logMass());
        return log - given.ends().logWindow();
    }

    /** The likelihood if one stage had other cardinals, the days being the likeliest with these and the rest as fitted. */
    double logLikelihoodWith(Fitted fitted, Stage stage, WarmDays.Rates rates) {
        double[][] prior = Matrix3.of(fitted.batchSpread * fitted.batchSpread, fitted.stageSpread * fitted.stageSpread);
        List<SeenDensity> densities = times.stream()
                .map(time -> SeenDensity.of(time.withOther(stage, rates).given(fitted.roundsDays), prior))
                .toList();
        double[] likeliest = fitted.logDays;
        for (int pass = 0; pass < LIKELIEST_PASSES; pass++) {
            double[][] precision = DAYS_PRECISION;
            double[] weighted = Matrix3.times(precision, fitted.logDays);
            for (int i = 0; i < densities.size(); i++) {
                SeenDensity density = densities.get(i);
                double weight = density.weight(Matrix3.plus(likeliest, effect(i), ONES));
                precision = Matrix3.plus(precision, weight, density.precision());
                weighted = Matrix3.plus(weighted, weight, density.weighted(effect(i)));
            }
            likeliest = Matrix3.times(Matrix3.inverse(precision), weighted);
        }
        double sum = 0;
        for (int i = 0; i < densities.size(); i++) {
            sum += densities.get(i).log(Matrix3.plus(likeliest, effect(i), ONES));
        }
        return sum;
    }
}
