package rootcast.learning;

import java.util.Arrays;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Cardinals;
import rootcast.outlook.DevelopmentRate;

/**
 * Optima and minima around what was stated of a stage, and how probable each is before any batch was seen: normal around it, 90 % being
 * as wide as the widest interval that {@link CardinalSearch} takes to tell the temperature.
 */
final class CardinalGrid {

    private static final double Z_90 = 1.6448536; // 90 % lie between it and its negative, from tables
    private static final double REACH_C = 6;
    private static final double OPTIMUM_STEP_C = 0.5;
    private static final double MIN_STEP_C = 1;
    private static final double APART_C = 1;
    private static final double NEXT_TO_NOTHING = 1e-6;

    /** By number of the optimum and of the minimum. */
    interface LogLikelihood {
        double at(int optimum, int minimum);
    }

    final Cardinals now;
    final double[] optimaC;
    final double[] minimaC;

    CardinalGrid(Cardinals now) {
        this.now = now;
        this.optimaC = around(now.optimumC(), OPTIMUM_STEP_C);
        this.minimaC = around(now.minC(), MIN_STEP_C);
    }

    private static double[] around(double centreC, double stepC) {
        int each = (int) (REACH_C / stepC);
        double[] values = new double[2 * each + 1];
        Arrays.setAll(values, i -> centreC + (i - each) * stepC);
        return values;
    }

    /** Of the distances from what was stated. */
    double logPrior(int optimum, int minimum) {
        double ofOptimum = 2 * Z_90 * (optimaC[optimum] - now.optimumC()) / CardinalSearch.WIDEST_OPTIMUM_C;
        double ofMinimum = 2 * Z_90 * (minimaC[minimum] - now.minC()) / CardinalSearch.WIDEST_MIN_C;
        return -(ofOptimum * ofOptimum + ofMinimum * ofMinimum) / 2;
    }

    /**
     * Variance, over all cardinals by how probable they are, of ln(rate) at a batch's temperature around that of all batches; the mean over
     * the batches.
     *
     * @param logLikelihood by number of the optimum and of the minimum
     */
    double rateVariance(LogLikelihood logLikelihood, double[] meansC) {
        double most = Double.NEGATIVE_INFINITY;
        for (int o = 0; o < optimaC.length; o++) {
            for (int m = 0; m < minimaC.length; m++) {
                most = Math.max(most, logLikelihood.at(o, m) + logPrior(o, m));
            }
        }
        double whole = 0;
        double[] first = new double[meansC.length];
        double[] second = new double[meansC.length];
        for (int o = 0; o < optimaC.length; o++) {
            for (int m = 0; m < minimaC.length; m++) {
                double likely = Math.exp(logLikelihood.at(o, m) + logPrior(o, m) - most);
                double[] apart = likely < NEXT_TO_NOTHING ? null : apart(o, m, meansC);
                if (apart != null) {
                    whole += likely;
                    for (int i = 0; i < apart.length; i++) {
                        first[i] += likely * apart[i];
                        second[i] += likely * apart[i] * apart[i];
                    }
                }
            }
        }
        double sum = 0;
        for (int i = 0; i < meansC.length && whole > 0; i++) {
            sum += second[i] / whole - first[i] / whole * (first[i] / whole);
        }
        return meansC.length == 0 ? 0 : sum / meansC.length;
    }

    /** Of ln(rate) at each temperature from the mean; null where the cardinals are none or nothing develops. */
    private double @Nullable [] apart(int optimum, int minimum, double[] meansC) {
        Cardinals cardinals = at(optimum, minimum).orElse(null);
        if (cardinals == null) {
            return null;
        }
        try {
            var rate = new DevelopmentRate(cardinals);
            double[] logs =
                    Arrays.stream(meansC).map(c -> Math.log(rate.perDay(c))).toArray();
            double mean = Arrays.stream(logs).average().orElse(0);
            return Double.isFinite(mean)
                    ? Arrays.stream(logs).map(log -> log - mean).toArray()
                    : null;
        } catch (IllegalArgumentException nothingAtReference) {
            return null;
        }
    }

    /** Empty where the three temperatures or the reference do not rise by at least {@value #APART_C} °C. */
    Optional<Cardinals> at(int optimum, int minimum) {
        double minC = minimaC[minimum];
        double optimumC = optimaC[optimum];
        boolean rises =
                minC + APART_C <= optimumC && optimumC + APART_C <= now.maxC() && minC + APART_C <= now.referenceC();
        return rises
                ? Optional.of(new Cardinals(now.form(), minC, optimumC, now.maxC(), now.referenceC()))
                : Optional.empty();
    }
}
