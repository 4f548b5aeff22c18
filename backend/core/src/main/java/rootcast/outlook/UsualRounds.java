package rootcast.outlook;

import rootcast.crop.Variation;

/**
 * How far apart the rounds of one batch are, as multiples of what is usual for the crop: the nodes of a normal distribution of the
 * logarithm with standard deviation 0.5 (Gauss-Hermite). Common practice, no source.
 */
final class UsualRounds {

    static final int NODES = 3;

    /** Number of the node that is as usual. */
    static final int USUAL = 1;

    private static final double[] OVER_USUAL = {Math.exp(-0.5 * Math.sqrt(3)), 1, Math.exp(0.5 * Math.sqrt(3))};
    private static final double[] SHARES = {1.0 / 6, 2.0 / 3, 1.0 / 6};

    private UsualRounds() {}

    static double days(Variation variation, int node) {
        return OVER_USUAL[node] * variation.roundsDays();
    }

    static double share(int node) {
        return SHARES[node];
    }

    /** A round every w days meets a moment with the density 1/w: relative to the usual rounds. */
    static double density(int node) {
        return SHARES[node] / OVER_USUAL[node];
    }
}
