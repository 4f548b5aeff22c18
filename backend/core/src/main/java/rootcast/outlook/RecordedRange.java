package rootcast.outlook;

import static rootcast.outlook.DevelopmentCurve.NEVER;

import java.util.Arrays;
import rootcast.crop.Calibration;

/**
 * Dates as the crop's own record has them: at each node of the belief the date that lies at the model's quantile which the record puts there.
 *
 * <p>With F the model's distribution and g of {@link Calibration.Knot#model} what is told is F′(t) = Φ(g⁻¹(Φ⁻¹(F(t)))): it rises as F
 * does. Nodes lie a sixth of the way from the median to the 90 % point apart, so g is a place among them. Beyond the last node
 * dates go on straight, but no earlier than a look that found the batch not ready.
 *
 * <p>Source: recalibrated distribution functions, Kuleshov, Fenner and Ermon 2018, ICML, PMLR 80:2796-2804.
 */
final class RecordedRange {

    private static final int LAST_NODE = RateBelief.NODES - 1;
    private static final double NODES_A_RANGE = RateBelief.P90 - (double) RateBelief.median();

    private final double[] places = new double[RateBelief.NODES];

    /** The same, those beyond the last node at it. */
    private final double[] within = new double[RateBelief.NODES];

    RecordedRange(Calibration.Knot record) {
        int median = RateBelief.median();
        // The fastest batch, the earliest date, is the last node.
        Arrays.setAll(places, node -> median - NODES_A_RANGE * record.model((median - node) / NODES_A_RANGE));
        Arrays.setAll(within, node -> Math.max(0, Math.min(LAST_NODE, places[node])));
    }

    /**
     * @param millis   by node, the latest first; changed in place
     * @param earliest no date lies before, if the median does not
     */
    void move(long[] millis, long earliest) {
        if (millis[RateBelief.median()] == NEVER) {
            return;
        }
        long[] moved = StagesTogether.at(within, millis);
        for (int node = 0; node < moved.length; node++) {
            if (places[node] < 0) {
                moved[node] = beyond(millis[0], millis[1], -places[node]);
            } else if (places[node] > LAST_NODE) {
                long early = beyond(millis[LAST_NODE], millis[LAST_NODE - 1], places[node] - LAST_NODE);
                moved[node] = Math.max(early, Math.min(earliest, millis[LAST_NODE]));
            }
        }
        System.arraycopy(moved, 0, millis, 0, moved.length);
    }

    private static long beyond(long end, long before, double nodes) {
        return end == NEVER || before == NEVER ? end : end + Math.round(nodes * (end - before));
    }

    /** The rate that goes with each of the moved dates; that of the last node beyond it. */
    RateBelief rate(RateBelief rate) {
        return rate.moved(within);
    }
}
