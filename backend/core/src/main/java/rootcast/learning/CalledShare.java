package rootcast.learning;

import java.util.Arrays;
import java.util.List;
import rootcast.crop.Variation;
import rootcast.learning.CellLikelihood.Normal;
import rootcast.learning.StageTimes.LookedAt;
import rootcast.numerics.NormalShare;
import rootcast.outlook.CellSpread;

/**
 * With how many of its cells through a stage is called complete: what looks with counts and the entries after them say of the crop.
 *
 * <p>On the scale of standard normal quantiles of the share of cells, z. A look that found k of n cells through, and was not followed by an
 * entry at the same visit, says that z of the count was not yet enough, Φ((z_q − z) / s); an entry says that what it had become by
 * then was, Φ((z − z_q) / s) over what is believed of the batch by its looks. s is what a call is out by. A stage without a look
 * before its entry says nothing.
 *
 * <p>Before any is seen z_q is normal around that of nine cells in ten, with the standard deviation that one call has, so it is worth one
 * call (unit information: Kass and Wasserman 1995, J. Amer. Statist. Assoc. 90:928-934): {@link StageTimes#CALL_SPREAD} of development over
 * 0.15, as far as cells usually lie apart relative to a stage. So 19 businesses in 20 call between 61 and 99 cells in a hundred.
 *
 * <p>Source: Finney 1971, Probit Analysis, 3rd ed., ch. 3 (a tolerance from responses of yes and no); half a cell is added to a count's either
 * side, Agresti 2013, Categorical Data Analysis, §3.1.
 */
final class CalledShare {

    private static final double PRIOR_SD = 0.5;
    private static final double ODD_SHARE = 0.001;
    private static final double STEP = 0.025;
    private static final double LEAST = CellSpread.quantileOf(Variation.LEAST_CALLED_SHARE);
    private static final double MOST = CellSpread.quantileOf(Variation.MOST_CALLED_SHARE);
    private static final double COMPLETE = CellSpread.quantileOf(Variation.COMPLETE_SHARE);

    /** A count and an entry of one working day are of one visit: reference-days, about days. Common practice, no source. */
    private static final double ONE_VISIT_DAYS = 0.5;

    private static final int NODES = 13;
    private static final double REACH_SD = 3;

    private final double[] logs = new double[(int) ((MOST - LEAST) / STEP) + 1];

    CalledShare() {
        for (int i = 0; i < logs.length; i++) {
            double apart = (quantile(i) - COMPLETE) / PRIOR_SD;
            logs[i] = -apart * apart / 2;
        }
    }

    /**
     * What one batch says.
     *
     * @param looks  at one stage
     * @param before of ln(the stage's reference-days), before anything was seen of the batch
     */
    void add(List<LookedAt> looks, Normal before, CellSpread cells) {
        double spread = StageTimes.CALL_SPREAD / cells.ofStage();
        LookedAt last = null;
        for (LookedAt look : looks) {
            if (look.isEntered() && look.toEntry() >= 0 && (last == null || look.toEntry() < last.toEntry())) {
                last = look;
            }
        }
        boolean isAtCount = last != null && last.toEntry() <= ONE_VISIT_DAYS;
        for (LookedAt look : looks) {
            boolean isBefore = !look.isEntered() || look.toEntry() > ONE_VISIT_DAYS;
            if (isBefore || isAtCount && look == last) {
                put(new double[] {ofCount(look)}, new double[] {1}, new double[] {spread}, isBefore ? -1 : 1);
            }
        }
        if (last != null && !isAtCount && last.toEntry() <= StageTimes.MOST_ROUNDS_DAYS) {
            entered(looks, last, before, cells, spread);
        }
    }

    private static double ofCount(LookedAt look) {
        return CellSpread.quantileOf((look.reached() + 0.5) / (look.cells() + 1));
    }

    private void entered(List<LookedAt> looks, LookedAt last, Normal before, CellSpread cells, double spread) {
        double[] z = new double[NODES];
        double[] weights = new double[NODES];
        double[] spreads = new double[NODES];
        double entry = Math.exp(last.logGained()) + last.toEntry();
        CellSpread usual = cells.differing(0);
        double sd = Math.sqrt(before.variance() + last.beginVariance());
        for (int i = 0; i < NODES; i++) {
            double node = REACH_SD * (2.0 * i / (NODES - 1) - 1);
            double y = before.mean() + sd * node;
            weights[i] = CellLikelihood.log(looks, y, cells) - node * node / 2;
            z[i] = usual.quantile(usual.beyond(entry / Math.exp(y)), CellSpread.USUAL);
            double then = usual.quantile(usual.beyond(Math.exp(last.logGained() - y)), CellSpread.USUAL);
            double ofRise = then == Double.NEGATIVE_INFINITY ? 0 : (z[i] - then) * cells.logDiffer();
            spreads[i] = Math.sqrt(spread * spread + ofRise * ofRise);
        }
        double most = Arrays.stream(weights).max().orElseThrow();
        Arrays.setAll(weights, i -> Math.exp(weights[i] - most));
        double whole = Arrays.stream(weights).sum();
        Arrays.setAll(weights, i -> weights[i] / whole);
        put(z, weights, spreads, 1);
    }

    /** @param sign 1 if it was called, −1 if not */
    private void put(double[] z, double[] weights, double[] spreads, int sign) {
        for (int i = 0; i < logs.length; i++) {
            double likely = 0;
            for (int j = 0; j < z.length; j++) {
                likely += weights[j] * NormalShare.below(sign * (z[j] - quantile(i)) / spreads[j]);
            }
            logs[i] += Math.log((1 - ODD_SHARE) * likely + ODD_SHARE);
        }
    }

    private static double quantile(int i) {
        return LEAST + i * STEP;
    }

    /** Mean of z_q after all that was added. */
    double quantile() {
        double most = Arrays.stream(logs).max().orElseThrow();
        double whole = 0;
        double first = 0;
        for (int i = 0; i < logs.length; i++) {
            double likely = Math.exp(logs[i] - most);
            whole += likely;
            first += likely * quantile(i);
        }
        return first / whole;
    }
}
