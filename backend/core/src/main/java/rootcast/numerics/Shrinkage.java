package rootcast.numerics;

import java.util.Arrays;

/**
 * Several measured values pulled towards their common mean, the more the less sure each is.
 *
 * <p>With values y of known variances V and k ≥ 4: A is the variance between the true values, found from Σ w·(k/(k − 1) ·
 * (y − m)² − V − A) = 0 for w = 1/(V + A) and m the mean weighted by w, and not below 0; each value keeps 1 − (k − 3)/(k − 1)
 * · V/(V + A) of its distance to m. If all V are equal that is Efron and Morris' estimate. With fewer values A cannot be
 * told from them: the caller's stands in, and each keeps A/(V + A).
 *
 * <p>Source: Morris 1983, J. Amer. Statist. Assoc. 78:47-55; Efron and Morris 1975, J. Amer. Statist. Assoc. 70:311-319.
 *
 * @param mean   of all
 * @param spread standard deviation between the true values, √A
 * @param values in the order they were given
 */
public record Shrinkage(double mean, double spread, double[] values) {

    private static final int FEWEST = 4;
    private static final int MOST_STEPS = 100;

    /**
     * @param values    one or more
     * @param variances of each, over 0
     * @param usualSpread standard deviation between the true values to assume of fewer than four
     */
    public static Shrinkage of(double[] values, double[] variances, double usualSpread) {
        int k = values.length;
        double between = k < FEWEST ? usualSpread * usualSpread : between(values, variances);
        double mean = mean(values, variances, between);
        double caution = k < FEWEST ? 1 : (k - 3.0) / (k - 1);
        double[] shrunk = new double[k];
        Arrays.setAll(shrunk, i -> {
            double kept = 1 - caution * variances[i] / (variances[i] + between);
            return mean + kept * (values[i] - mean);
        });
        return new Shrinkage(mean, Math.sqrt(between), shrunk);
    }

    private static double mean(double[] values, double[] variances, double between) {
        double weights = 0;
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            double weight = 1 / (variances[i] + between);
            weights += weight;
            sum += weight * values[i];
        }
        return sum / weights;
    }

    /** Halving: the sum falls as A grows. */
    private static double between(double[] values, double[] variances) {
        if (excess(values, variances, 0) <= 0) {
            return 0;
        }
        double low = 0;
        double high = Arrays.stream(variances).max().orElseThrow();
        while (excess(values, variances, high) > 0) {
            high *= 2;
        }
        for (int step = 0; step < MOST_STEPS && low < high; step++) {
            double middle = (low + high) / 2;
            if (excess(values, variances, middle) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    private static double excess(double[] values, double[] variances, double between) {
        double mean = mean(values, variances, between);
        double k = values.length;
        double sum = 0;
        for (int i = 0; i < values.length; i++) {
            double distance = values[i] - mean;
            sum += (k / (k - 1) * distance * distance - variances[i] - between) / (variances[i] + between);
        }
        return sum;
    }
}
