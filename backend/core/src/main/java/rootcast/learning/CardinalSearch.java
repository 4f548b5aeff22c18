package rootcast.learning;

import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.climate.Quantity;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.learning.RateFit.Fitted;
import rootcast.outlook.DevelopmentRate;
import rootcast.saying.Saying;

/**
 * Minimum and optimum of a stage, as far as batches at different temperatures tell them.
 *
 * <p>The likelihood of the moments seen is computed on a grid of optimum and minimum around the profile's, the days at
 * each point being the likeliest. Of each temperature the values whose best likelihood comes within {@value #LOG_NEAR} of
 * the best of all (90 %, chi-square with one degree of freedom) are its interval. It is identified if that lies inside
 * the grid and is at most {@value #WIDEST_OPTIMUM_C} °C (optimum) or {@value #WIDEST_MIN_C} °C (minimum) wide. The maximum
 * is never learned: no grower keeps a house there.
 *
 * <p>What is learned is not the value that fits best but the most probable one, within that interval: what was stated counts as known as well as the widest
 * interval that counts as telling it, normal with 90 % as wide as that. With few batches the best fit follows their chance: with 20
 * it was further from the truth than a guess from books.
 *
 * <p>Source: Venzon and Moolgavkar 1988, Applied Statistics 37:87-94 (profile likelihood); Gelman et al. 2013, Bayesian Data Analysis, 3rd
 * ed., §13.1 (posterior mode). The widths are our choice.
 */
final class CardinalSearch {

    private static final int FEWEST_BATCHES = 12;
    private static final double LEAST_SPAN_C = 2;
    private static final double LOG_NEAR = 1.353; // half of 2.706, the 90 % point of chi-square(1), from tables
    static final double WIDEST_OPTIMUM_C = 4;
    static final double WIDEST_MIN_C = 6;
    private static final String QUANTITY = Quantity.MEDIUM_TEMPERATURE.wireName();

    private final List<BatchRecord> records;
    private final CropProfile profile;
    private final RateFit fit;
    private final Fitted fitted;

    /** By stage: of ln(rate) at the batches' temperatures, around their mean, because the cardinals are not known exactly. */
    private final double[] rateVariance = new double[Matrix3.N];

    /** @param fit that {@code fitted} came from */
    CardinalSearch(List<BatchRecord> records, CropProfile profile, RateFit fit, Fitted fitted) {
        this.records = records;
        this.profile = profile;
        this.fit = fit;
        this.fitted = fitted;
    }

    Evidence.OfCardinals search(Stage stage) {
        double[] meansC = records.stream()
                .flatMap(record -> record.stages().stream())
                .filter(seen -> seen.stage() == stage && seen.gained().days() > 0)
                .mapToDouble(seen -> seen.gained().meanC())
                .sorted()
                .toArray();
        CardinalGrid grid = new CardinalGrid(profile.of(stage).cardinals());
        rateVariance[Stage.GROWING.indexOf(stage)] = grid.rateVariance((o, m) -> 0, meansC);
        if (meansC.length < FEWEST_BATCHES) {
            return no(stage, Saying.of(CardinalsWhy.TOO_FEW_BATCHES, meansC.length, FEWEST_BATCHES));
        }
        double spanC = meansC[(int) Math.ceil(0.9 * meansC.length) - 1] - meansC[meansC.length / 10];
        if (spanC < LEAST_SPAN_C) {
            return no(stage, Saying.of(CardinalsWhy.TOO_NARROW, meansC.length, tenths(Math.abs(spanC)), QUANTITY));
        }
        return searched(stage, grid, meansC);
    }

    /** Mean of the stages: how much further apart batches run, each stage for itself, because cardinals are not known exactly. */
    double rateVariance() {
        return Arrays.stream(rateVariance).average().orElseThrow();
    }

    private Evidence.OfCardinals searched(Stage stage, CardinalGrid grid, double[] meansC) {
        double[][] logs = new double[grid.optimaC.length][grid.minimaC.length];
        double[][] probable = new double[grid.optimaC.length][grid.minimaC.length];
        for (int o = 0; o < logs.length; o++) {
            for (int m = 0; m < logs[o].length; m++) {
                logs[o][m] =
                        grid.at(o, m).map(cardinals -> value(stage, cardinals)).orElse(Double.NEGATIVE_INFINITY);
                probable[o][m] = logs[o][m] + grid.logPrior(o, m);
            }
        }
        rateVariance[Stage.GROWING.indexOf(stage)] = grid.rateVariance((o, m) -> logs[o][m], meansC);
        double best = Arrays.stream(logs).flatMapToDouble(Arrays::stream).max().orElseThrow();
        Interval optimum = Interval.of(largestOfRows(logs), best, largestOfRows(probable), grid.optimaC);
        Interval minimum = Interval.of(largestOfColumns(logs), best, largestOfColumns(probable), grid.minimaC);
        boolean isOptimum = optimum.isWithin(WIDEST_OPTIMUM_C);
        boolean isMinimum = minimum.isWithin(WIDEST_MIN_C);
        boolean isNeither = !isOptimum && !isMinimum;
        Saying found = Saying.of(
                isNeither ? CardinalsWhy.NEITHER_TOLD : CardinalsWhy.FOUND,
                meansC.length,
                tenths(meansC[0]),
                tenths(meansC[meansC.length - 1]),
                optimum.least(),
                optimum.most(),
                minimum.least(),
                minimum.most(),
                QUANTITY);
        if (isNeither) {
            return no(stage, found);
        }
        double optimumC = isOptimum ? optimum.bestC : grid.now.optimumC();
        double minC = isMinimum ? minimum.bestC : grid.now.minC();
        if (!isMinimum || !isOptimum) {
            // The other one stays what it was: the most probable beside it, not beside a value that is not taken.
            int fixed = isMinimum ? grid.optimaC.length / 2 : grid.minimaC.length / 2;
            double[] along = isMinimum ? logs[fixed] : column(logs, fixed);
            double[] probableAlong = isMinimum ? probable[fixed] : column(probable, fixed);
            double[] valuesC = isMinimum ? grid.minimaC : grid.optimaC;
            double bestAlong = Arrays.stream(along).max().orElseThrow();
            double probableC = Interval.of(along, bestAlong, probableAlong, valuesC).bestC;
            optimumC = isOptimum ? probableC : optimumC;
            minC = isMinimum ? probableC : minC;
        }
        return new Evidence.OfCardinals(
                stage,
                true,
                found.english(),
                found,
                isMinimum ? (Double) minC : null,
                isOptimum ? (Double) optimumC : null,
                null);
    }

    private static double[] largestOfRows(double[][] rows) {
        return Arrays.stream(rows)
                .mapToDouble(row -> Arrays.stream(row).max().orElseThrow())
                .toArray();
    }

    private static double[] largestOfColumns(double[][] rows) {
        double[] largest = new double[rows[0].length];
        Arrays.setAll(
                largest,
                m -> Arrays.stream(rows).mapToDouble(row -> row[m]).max().orElseThrow());
        return largest;
    }

    private static double[] column(double[][] rows, int column) {
        return Arrays.stream(rows).mapToDouble(row -> row[column]).toArray();
    }

    private double value(Stage stage, Cardinals cardinals) {
        try {
            return fit.logLikelihoodWith(fitted, stage, new WarmDays.Rates(new DevelopmentRate(cardinals)));
        } catch (IllegalArgumentException nothingAtReference) {
            return Double.NEGATIVE_INFINITY; // so flat at the reference that days stated for it mean nothing
        }
    }

    private static Evidence.OfCardinals no(Stage stage, Saying why) {
        return new Evidence.OfCardinals(stage, false, why.english(), why, null, null, null);
    }

    /** As exactly as it is worth telling. */
    private static double tenths(double celsius) {
        return Math.round(10 * celsius) / 10.0;
    }

    /** Values of one temperature that come near the best, and the most probable of them. */
    record Interval(double lowC, double highC, double bestC, boolean openBelow, boolean openAbove) {

        static Interval of(double[] logs, double best, double[] probable, double[] valuesC) {
            int low = 0;
            while (logs[low] < best - LOG_NEAR) {
                low++;
            }
            int high = logs.length - 1;
            while (logs[high] < best - LOG_NEAR) {
                high--;
            }
            int top = low;
            for (int i = low; i <= high; i++) {
                top = probable[i] > probable[top] ? i : top;
            }
            return new Interval(
                    valuesC[low],
                    valuesC[high],
                    valuesC[top],
                    low == 0 || logs[low - 1] == Double.NEGATIVE_INFINITY,
                    high == logs.length - 1 || logs[high + 1] == Double.NEGATIVE_INFINITY);
        }

        boolean isWithin(double widestC) {
            return !openBelow && !openAbove && highC - lowC <= widestC;
        }

        @Nullable
        Double least() {
            return openBelow ? null : tenths(lowC);
        }

        @Nullable
        Double most() {
            return openAbove ? null : tenths(highC);
        }
    }
}
