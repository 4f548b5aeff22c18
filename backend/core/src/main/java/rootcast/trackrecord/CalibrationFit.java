package rootcast.trackrecord;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.statistics.distribution.NormalDistribution;
import rootcast.crop.Calibration;
import rootcast.outlook.Foretold;

/**
 * From hindcasts of finished batches to what they say of the model's dates and ranges.
 *
 * <p>What is sought at a lead are the model's quantiles at which one in ten, half and nine in ten of the batches were ready. A batch's own quantile is not
 * known to a point: by what is believed of all, g, it is distributed as g(z) · likelihood(z). The mean of these over the batches, with {@value
 * #PRIOR_BATCHES} imagined ones of which the model is right, has the three quantiles that make the next g, a normal law on each side of its
 * median, until it stays (self-consistency, Efron 1967; Turnbull 1976; expectation and maximisation, Dempster, Laird and Rubin 1977). What
 * says nothing so changes nothing, and one record moves a quantile by no more than its own weight.
 *
 * <p>Source: recalibration by the distribution of what was foretold, Kuleshov, Fenner and Ermon 2018, ICML, PMLR 80:2796-2804; outcomes known in part, Czado, Gneiting
 * and Held 2009, Biometrics 65:1254-1261. Why not isotonic regression: docs/decisions/0014.
 */
public final class CalibrationFit {

    /**
     * As many batches as the track record wants before it says anything of a crop: ln of a range's width is then known to 1/√(2 · 8), a
     * quarter, beforehand.
     */
    static final int PRIOR_BATCHES = Trust.FEWEST;

    /** After half a year, the opposite season, a batch counts half; the same season a year ago a quarter. Our choice. */
    private static final double HALF_LIFE_DAYS = 182.5;

    /** Batches of one house that were ready in one such time share their weather. Common practice, no source. */
    private static final long PERIOD_SECONDS = 14 * 86_400;

    private static final double[] LEADS_DAYS = {1, 2, 4, 8, 16, 32};
    private static final double[] PROBABILITIES = {0.1, 0.5, 0.9};
    private static final double DAY_MILLIS = 86_400_000;
    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double Z_90 = NORMAL.inverseCumulativeProbability(0.9);

    /** Far more than are needed; a step less than that is no step. */
    private static final int MOST_STEPS = 300;

    private static final double NO_STEP = 1e-7;

    /** The scores are cut so fine between quantiles: the law has a step at its median. */
    private static final int CELLS_A_QUANTILE = 4;

    private static final int CELLS = (Foretold.QUANTILES - 1) * CELLS_A_QUANTILE + 1;
    private static final double STEP = (Foretold.score(1) - Foretold.score(0)) / CELLS_A_QUANTILE;

    /** Scores at which one cell ends and the next begins. */
    private static final double[] BOUNDS = new double[CELLS - 1];

    /** Probability of a smaller score than that in a cell's middle, by the model. */
    private static final double[] MODEL_BELOW = new double[CELLS];

    static {
        Arrays.setAll(BOUNDS, cell -> Foretold.score(0) + (cell + 0.5) * STEP);
        Arrays.setAll(MODEL_BELOW, cell -> NORMAL.cumulativeProbability(Foretold.score(0) + cell * STEP));
    }

    private CalibrationFit() {}

    /** One batch at one lead, its days weighed to one. */
    private record AtLead(Hindcast first, double weight, List<double[]> days, double[] shares) {

        static AtLead of(List<Hindcast> days, double weight, double[] shares) {
            return new AtLead(
                    days.get(0),
                    weight,
                    days.stream().map(each -> byCell(each.likelihood())).toList(),
                    shares);
        }

        /** Straight in the logarithm between quantiles. */
        private static double[] byCell(double[] likelihood) {
            double[] cells = new double[CELLS];
            for (int cell = 0; cell < CELLS; cell++) {
                int before = Math.min(Foretold.QUANTILES - 2, cell / CELLS_A_QUANTILE);
                double part = (double) cell / CELLS_A_QUANTILE - before;
                cells[cell] = Math.pow(likelihood[before], 1 - part) * Math.pow(likelihood[before + 1], part);
            }
            return cells;
        }

        String cluster() {
            return first.house() + " " + Math.floorDiv(first.readyAt().getEpochSecond(), PERIOD_SECONDS);
        }

        /** Where it was ready, by cell, if so much is believed of each beforehand. */
        double[] believed(double[] before) {
            double[] mean = new double[CELLS];
            for (int day = 0; day < shares.length; day++) {
                double[] ofDay = believed(day, before);
                for (int cell = 0; cell < CELLS; cell++) {
                    mean[cell] += shares[day] * ofDay[cell];
                }
            }
            return mean;
        }

        private double[] believed(int day, double[] before) {
            double[] likelihood = days.get(day);
            double[] after = new double[CELLS];
            double all = 0;
            for (int cell = 0; cell < CELLS; cell++) {
                after[cell] = before[cell] * likelihood[cell];
                all += after[cell];
            }
            if (!(all > 0)) {
                return before;
            }
            for (int cell = 0; cell < CELLS; cell++) {
                after[cell] /= all;
            }
            return after;
        }
    }

    /**
     * Whatever order they come in.
     *
     * @param hindcasts each of a profile that had not learned from its batch
     */
    public static Calibration of(List<Hindcast> hindcasts) {
        if (hindcasts.isEmpty()) {
            return Calibration.NONE;
        }
        Map<String, List<Hindcast>> byBatch = new TreeMap<>();
        for (Hindcast each : hindcasts) {
            byBatch.computeIfAbsent(each.batch(), any -> new ArrayList<>()).add(each);
        }
        byBatch.values().forEach(days -> days.sort(Comparator.comparing(Hindcast::origin)));
        Instant newest = hindcasts.stream()
                .map(Hindcast::readyAt)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        List<Calibration.Knot> knots = new ArrayList<>();
        for (int knot = 0; knot < LEADS_DAYS.length; knot++) {
            knots.add(fitted(LEADS_DAYS[knot], atLead(knot, byBatch, newest)));
        }
        return new Calibration(knots);
    }

    private static List<AtLead> atLead(int knot, Map<String, List<Hindcast>> byBatch, Instant newest) {
        List<AtLead> batches = new ArrayList<>();
        for (List<Hindcast> days : byBatch.values()) {
            List<Hindcast> near = new ArrayList<>();
            List<Double> nearness = new ArrayList<>();
            double sum = 0;
            for (Hindcast day : days) {
                double share = nearness(knot, day.leadDays());
                if (share > 0) {
                    near.add(day);
                    nearness.add(share);
                    sum += share;
                }
            }
            if (sum > 0) {
                double all = sum;
                double ageDays = Duration.between(near.get(0).readyAt(), newest).toMillis() / DAY_MILLIS;
                batches.add(AtLead.of(
                        near,
                        Math.min(1, sum) * Math.pow(2, -ageDays / HALF_LIFE_DAYS),
                        nearness.stream().mapToDouble(each -> each / all).toArray()));
            }
        }
        return batches;
    }

    /** Of a lead to one of those that are fitted: straight in the logarithm, and 1 in all for each lead. */
    private static double nearness(int knot, double leadDays) {
        double log = Math.log(Math.max(LEADS_DAYS[0], Math.min(LEADS_DAYS[LEADS_DAYS.length - 1], leadDays)));
        double here = Math.log(LEADS_DAYS[knot]);
        if (log == here) {
            return 1;
        }
        int next = log < here ? knot - 1 : knot + 1;
        return Math.max(0, 1 - (log - here) / (Math.log(LEADS_DAYS[next]) - here));
    }

    private static Calibration.Knot fitted(double leadDays, List<AtLead> batches) {
        double[] byModel = {-Z_90, 0, Z_90};
        double[] prior = masses(byModel);
        double worth = 1 / timesCounted(batches, prior);
        double[] quantiles = byModel;
        double change = batches.isEmpty() ? 0 : Double.POSITIVE_INFINITY;
        for (int step = 0; step < MOST_STEPS && change > NO_STEP; step++) {
            double[] believed = masses(quantiles);
            double[] all = new double[CELLS];
            Arrays.setAll(all, cell -> PRIOR_BATCHES * prior[cell]);
            for (AtLead batch : batches) {
                double[] own = batch.believed(believed);
                for (int cell = 0; cell < CELLS; cell++) {
                    all[cell] += worth * batch.weight * own[cell];
                }
            }
            double[] next = quantiles(all);
            change = 0;
            for (int i = 0; i < next.length; i++) {
                change = Math.max(change, Math.abs(next[i] - quantiles[i]));
            }
            quantiles = next;
        }
        double batchesWorth =
                worth * batches.stream().mapToDouble(AtLead::weight).sum();
        double wider = toForetell(worth * told(batches, masses(quantiles)));
        return new Calibration.Knot(
                leadDays,
                rounded((quantiles[1] + wider * (quantiles[0] - quantiles[1])) / Z_90),
                rounded(quantiles[1] / Z_90),
                rounded((quantiles[1] + wider * (quantiles[2] - quantiles[1])) / Z_90),
                rounded(batchesWorth));
    }

    /** As many batches as would tell so much if each were known to a point: 1 − variance after / before of each (MacKay 1992, Neural Computation 4:415-447). */
    private static double told(List<AtLead> batches, double[] believed) {
        double before = variance(believed);
        double told = 0;
        for (AtLead batch : batches) {
            for (int day = 0; day < batch.shares.length; day++) {
                double after = variance(batch.believed(day, believed));
                told += batch.weight * batch.shares[day] * Math.max(0, 1 - after / before);
            }
        }
        return told;
    }

    private static double variance(double[] masses) {
        double first = 0;
        double second = 0;
        for (int cell = 0; cell < CELLS; cell++) {
            first += cell * masses[cell];
            second += (double) cell * cell * masses[cell];
        }
        return second - first * first;
    }

    /**
     * As much wider the ends of a range must be because they are known from so many batches only. An end q̂ with variance V around q holds
     * Φ(q) − q φ(q) V / 2 on the mean, which q (1 + V / 2) makes good; V = p (1 − p) / φ(q)² · n / (n + imagined)², the variance of a sample's quantile.
     *
     * @param batches known to a point
     */
    private static double toForetell(double batches) {
        double density = NORMAL.density(Z_90);
        double all = batches + PRIOR_BATCHES;
        return 1 + PROBABILITIES[0] * PROBABILITIES[2] / (density * density) * batches / (all * all) / 2;
    }

    /** The digits beyond say nothing, and a record that has said nothing new leaves all as it was. */
    private static double rounded(double value) {
        return Math.round(value * 1000) / 1000.0;
    }

    /** Of each cell of the scores, normal on either side of the median. */
    private static double[] masses(double[] quantiles) {
        double[] masses = new double[CELLS];
        double below = 0;
        for (int cell = 0; cell < CELLS; cell++) {
            double until = 1;
            if (cell < CELLS - 1) {
                double apart = BOUNDS[cell] - quantiles[1];
                double side = apart < 0 ? quantiles[1] - quantiles[0] : quantiles[2] - quantiles[1];
                until = NORMAL.cumulativeProbability(apart / side * Z_90);
            }
            masses[cell] = until - below;
            below = until;
        }
        return masses;
    }

    /** At the three probabilities; between bounds of cells straight on the scale of normal scores. */
    private static double[] quantiles(double[] masses) {
        double all = Arrays.stream(masses).sum();
        double[] quantiles = new double[PROBABILITIES.length];
        double below = masses[0];
        int cell = 1;
        for (int i = 0; i < quantiles.length; i++) {
            double wanted = PROBABILITIES[i] * all;
            while (cell < CELLS - 2 && below + masses[cell] < wanted) {
                below += masses[cell++];
            }
            double from = score(below / all);
            double to = score((below + masses[cell]) / all);
            double part = (score(PROBABILITIES[i]) - from) / (to - from);
            quantiles[i] = BOUNDS[cell - 1] + Math.max(0, Math.min(1, part)) * (BOUNDS[cell] - BOUNDS[cell - 1]);
        }
        return quantiles;
    }

    private static double score(double probability) {
        return NORMAL.inverseCumulativeProbability(probability);
    }

    /**
     * How often each batch is counted that shares its weather with others: the variance of the mean probability at which batches were
     * ready, clusters counted as one each, over that of batches that stand alone; 1 at least. Of one cluster alone it cannot be told: it counts as one batch.
     *
     * <p>Source: Korn and Graubard 1998, Survey Methodology 24:193-201 (from memory).
     */
    private static double timesCounted(List<AtLead> batches, double[] byModel) {
        double sum = 0;
        double weights = 0;
        double[] ready = new double[batches.size()];
        for (int i = 0; i < ready.length; i++) {
            double[] own = batches.get(i).believed(byModel);
            for (int cell = 0; cell < CELLS; cell++) {
                ready[i] += own[cell] * MODEL_BELOW[cell];
            }
            sum += batches.get(i).weight * ready[i];
            weights += batches.get(i).weight;
        }
        Map<String, Double> clusters = new TreeMap<>();
        double alone = 0;
        for (int i = 0; i < ready.length; i++) {
            double apart = batches.get(i).weight * (ready[i] - sum / weights);
            alone += apart * apart;
            clusters.merge(batches.get(i).cluster(), apart, Double::sum);
        }
        if (clusters.size() < 2) {
            return Math.max(1, batches.size());
        }
        double together =
                clusters.values().stream().mapToDouble(each -> each * each).sum();
        double ofFew = clusters.size() / (clusters.size() - 1.0) * (batches.size() - 1.0) / batches.size();
        return alone > 0 ? Math.max(1, ofFew * together / alone) : 1;
    }
}
