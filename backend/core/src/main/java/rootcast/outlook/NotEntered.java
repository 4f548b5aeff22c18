package rootcast.outlook;

import org.jspecify.annotations.Nullable;
import rootcast.crop.Variation;

/**
 * What it says of a batch that nobody has entered its stage as complete by now.
 *
 * <p>Had the stage ended t days ago, somebody who comes round every w days would have met it with probability min(1, t/w), and
 * have entered it with the share of the crop's stages that are entered. So nothing entered is as likely as 1 − share · min(1, t/w),
 * over the rounds w that are usual; t counts from the last look that found the stage incomplete, whose cells have said
 * what they say already. Each node of what is believed of the rates weighs so much; the nodes are then moved to where the probabilities
 * that they stand for are.
 *
 * <p>Source: Bayes' rule; a round every w days meets a moment with the density 1/w (renewal theory, Cox 1962, §5.2).
 */
final class NotEntered {

    private static final double DAY_MILLIS = 86_400_000;

    private NotEntered() {}

    /**
     * Where among the nodes those lie that have their probabilities now, by node; null if nothing has to move.
     *
     * @param ends by stage and node
     */
    static double @Nullable [] places(
            Variation variation, StageRates rates, StagePath path, long[][] ends, long nowMillis) {
        int current = rates.current();
        if (current == StagePath.STAGES || ends[current][RateBelief.NODES - 1] >= nowMillis) {
            return null;
        }
        double[] weights = new double[RateBelief.NODES];
        for (int node = 0; node < weights.length; node++) {
            weights[node] = 1;
            for (int stage = current; stage < StagePath.STAGES; stage++) {
                long since = Math.max(ends[stage][node], path.incompleteAt(stage));
                weights[node] *= share(variation, since, nowMillis);
            }
        }
        return moved(weights, rates.of(current));
    }

    /** Of the stages that have ended at a moment so many are not entered by now. */
    static double share(Variation variation, long sinceMillis, long nowMillis) {
        return 1 - variation.enteredShare() * metShare(variation, (nowMillis - sinceMillis) / DAY_MILLIS);
    }

    private static double metShare(Variation variation, double days) {
        double met = 0;
        for (int node = 0; node < UsualRounds.NODES && days > 0; node++) {
            met += UsualRounds.share(node) * Math.min(1, days / UsualRounds.days(variation, node));
        }
        return met;
    }

    private static double @Nullable [] moved(double[] weights, RateBelief belief) {
        int last = weights.length - 1;
        double[] below = new double[weights.length];
        for (int node = 1; node <= last; node++) {
            double share = belief.slowerShare(node) - belief.slowerShare(node - 1);
            below[node] = below[node - 1] + share * (weights[node] + weights[node - 1]) / 2;
        }
        if (!(below[last] > 0)) {
            return null;
        }
        double[] places = new double[weights.length];
        int low = 0;
        for (int node = 0; node <= last; node++) {
            double wanted = belief.slowerShare(node) * below[last];
            while (low < last - 1 && below[low + 1] <= wanted) {
                low++;
            }
            double width = below[low + 1] - below[low];
            places[node] = width > 0 ? low + Math.min(1, (wanted - below[low]) / width) : low;
        }
        return places;
    }
}
