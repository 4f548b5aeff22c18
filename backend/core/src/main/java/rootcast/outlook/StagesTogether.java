package rootcast.outlook;

import java.util.Arrays;

/**
 * How far the stages up to one go fast or slow together, and what follows for the dates of its end.
 *
 * <p>A node of the rates takes each stage at its own quantile of that node, as if all went together. Then what each stage adds to how far
 * the dates lie apart, dᵢ, would add up; with correlations ρᵢⱼ of ln M it comes to √(Σ dᵢdⱼρᵢⱼ). So the dates are those of nodes
 * nearer to the median by that ratio. The rate of the last of these stages goes with the date of its end as far as it is
 * correlated with it: at a node of the date it is, on the mean, that of a node nearer to the median by Σ dⱼρ / √(Σ dᵢdⱼρᵢⱼ).
 *
 * <p>Source: variance of a sum; regression of normal variables.
 */
record StagesTogether(double ofDates, double ofLastRate) {

    private static final StagesTogether WHOLLY = new StagesTogether(1, 1);

    /**
     * @param ends by stage and node, all stages taken together
     */
    static StagesTogether upTo(int stage, StageRates rates, long[][] ends) {
        int current = rates.current();
        if (stage <= current) {
            return WHOLLY;
        }
        double together = 0;
        double square = 0;
        double withLast = 0;
        for (int i = current; i <= stage; i++) {
            double adds = adds(i, current, ends);
            together += adds;
            withLast += adds * (i == stage ? 1 : rates.correlation(i, stage));
            for (int j = current; j <= stage; j++) {
                square += adds * adds(j, current, ends) * (i == j ? 1 : rates.correlation(i, j));
            }
        }
        double apart = Math.sqrt(square);
        return apart > 0 ? new StagesTogether(Math.min(1, apart / together), Math.min(1, withLast / apart)) : WHOLLY;
    }

    private static double adds(int stage, int current, long[][] ends) {
        return Math.max(0, reach(ends[stage]) - (stage == current ? 0 : reach(ends[stage - 1])));
    }

    /** The way from the late to the early one in ten; 0 where one never comes. */
    private static double reach(long[] ends) {
        long late = ends[RateBelief.P10];
        return late == DevelopmentCurve.NEVER ? 0 : late - ends[RateBelief.P90];
    }

    /** @param ends by node, all stages taken together */
    long[] dates(long[] ends) {
        if (ofDates == 1) {
            return ends;
        }
        double[] places = new double[RateBelief.NODES];
        Arrays.setAll(places, node -> RateBelief.nearer(node, ofDates));
        return at(places, ends);
    }

    /** Moments at places among the nodes. */
    static long[] at(double[] places, long[] moments) {
        long[] at = new long[RateBelief.NODES];
        for (int node = 0; node < at.length; node++) {
            int low = Math.min(RateBelief.NODES - 2, (int) places[node]);
            double part = places[node] - low;
            boolean never = moments[low] == DevelopmentCurve.NEVER || moments[low + 1] == DevelopmentCurve.NEVER;
            at[node] = never || part == 0
                    ? moments[part > 0.5 ? low + 1 : low]
                    : moments[low] + Math.round(part * (moments[low + 1] - moments[low]));
        }
        return at;
    }

    /** The last stage's rate by node of the date. */
    RateBelief lastRate(RateBelief rate) {
        return ofLastRate == 1 ? rate : rate.nearer(ofLastRate);
    }
}
