package rootcast.learning;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.TreeSet;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import rootcast.numerics.Shrinkage;

/**
 * How varieties, or sites, differ from the crop: one effect on ln(days) each, shrunk to nothing the less is known.
 *
 * <p>One group alone cannot be told from the crop; then there is no effect.
 */
final class RateGroups {

    /** Standard deviation between two or three groups, which do not tell it themselves. Common practice, no source. */
    private static final double USUAL_SPREAD = 0.05;

    private static final double[] ONES = {1, 1, 1};

    private final List<String> codes;
    private final int[] groupOf;
    private double[] effects;
    private double spread;

    /** @param codes by batch */
    RateGroups(List<String> codes) {
        this.codes = new ArrayList<>(new TreeSet<>(codes));
        this.groupOf = codes.stream().mapToInt(this.codes::indexOf).toArray();
        this.effects = new double[this.codes.size()];
    }

    void reset() {
        effects = new double[codes.size()];
        spread = 0;
    }

    double effect(int batch) {
        return effects[groupOf[batch]];
    }

    void shrink(List<BatchBelief> batches, double[] logDays, IntToDoubleFunction otherEffect) {
        double[] precision = new double[codes.size()];
        double[] weighted = new double[codes.size()];
        for (int i = 0; i < groupOf.length; i++) {
            BatchBelief batch = batches.get(i);
            double[] mean = Matrix3.plus(logDays, otherEffect.applyAsDouble(i), ONES);
            double[] rest = Matrix3.plus(batch.meanWeighted(), -1, Matrix3.times(batch.meanPrecision(), mean));
            precision[groupOf[i]] += batch.weight() * Matrix3.sum(batch.meanPrecision());
            weighted[groupOf[i]] += batch.weight() * Matrix3.sum(rest);
        }
        int[] known = IntStream.range(0, precision.length)
                .filter(group -> precision[group] > 0)
                .toArray();
        reset();
        if (known.length < 2) {
            return;
        }
        double[] values = new double[known.length];
        double[] variances = new double[known.length];
        for (int i = 0; i < known.length; i++) {
            values[i] = weighted[known[i]] / precision[known[i]];
            variances[i] = 1 / precision[known[i]];
        }
        Shrinkage shrunk = Shrinkage.of(values, variances, USUAL_SPREAD);
        spread = shrunk.spread();
        for (int i = 0; i < known.length; i++) {
            effects[known[i]] = shrunk.values()[i] - shrunk.mean();
        }
    }

    /** How far the mean of these groups may lie from that of all there could be. */
    double varianceOfMean() {
        return codes.isEmpty() ? 0 : spread * spread / codes.size();
    }

    /** e^−effect by code; empty if there is one group. */
    Map<String, Double> rates() {
        Map<String, Double> rates = new TreeMap<>();
        for (int group = 0; group < codes.size() && codes.size() > 1; group++) {
            rates.put(codes.get(group), Math.exp(-effects[group]));
        }
        return rates;
    }
}
