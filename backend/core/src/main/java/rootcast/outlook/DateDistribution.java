package rootcast.outlook;

import java.time.Instant;
import rootcast.numerics.FirstTrue;

/**
 * When something will have happened to a batch: one date for each node of the rate belief, straight lines between.
 *
 * <p>A date beyond the model's horizon is {@link #NEVER}.
 */
public final class DateDistribution {

    /** Later than any date: it does not happen at the temperatures expected. */
    public static final Instant NEVER = Instant.MAX;

    /** Rounding at a node must not reach for a neighbour that never happens. */
    private static final double AT_NODE = 1e-9;

    private final RateBelief belief;

    /** By node, so the fastest batch and the earliest date come last. */
    private final long[] millis;

    DateDistribution(RateBelief belief, long[] millis) {
        this.belief = belief;
        this.millis = millis;
    }

    /** Probability that it has happened at {@code instant}; never falls as time goes on. */
    public double probabilityBy(Instant instant) {
        long at = instant.equals(NEVER) ? DevelopmentCurve.NEVER - 1 : instant.toEpochMilli();
        int node = FirstTrue.in(0, RateBelief.NODES, k -> millis[k] <= at);
        if (node == 0) {
            return 1;
        }
        if (node == RateBelief.NODES) {
            return 0;
        }
        double slower = belief.slowerShare(node);
        if (millis[node - 1] == DevelopmentCurve.NEVER) {
            return 1 - slower;
        }
        double part = (double) (at - millis[node]) / (millis[node - 1] - millis[node]);
        return 1 - slower + part * (slower - belief.slowerShare(node - 1));
    }

    /** The earliest instant by which it has happened with this probability, over 0 and under 1. */
    public Instant quantile(double probability) {
        if (!(probability > 0 && probability < 1)) {
            throw new IllegalArgumentException("probability " + probability + " must lie between 0 and 1");
        }
        double slower = 1 - probability;
        int node = FirstTrue.in(1, RateBelief.NODES - 1, k -> belief.slowerShare(k) >= slower - AT_NODE);
        double width = belief.slowerShare(node) - belief.slowerShare(node - 1);
        double part = (belief.slowerShare(node) - slower) / width;
        if (part < AT_NODE / width) {
            return instant(millis[node]);
        }
        return millis[node - 1] == DevelopmentCurve.NEVER
                ? NEVER
                : instant(millis[node] + Math.round(part * (millis[node - 1] - millis[node])));
    }

    public DateRange range() {
        return range(millis);
    }

    /** The dates at the nodes that are these three quantiles. */
    static DateRange range(long[] millis) {
        return new DateRange(
                instant(millis[RateBelief.P90]), instant(millis[RateBelief.median()]), instant(millis[RateBelief.P10]));
    }

    static Instant instant(long millis) {
        return millis == DevelopmentCurve.NEVER ? NEVER : Instant.ofEpochMilli(millis);
    }
}
