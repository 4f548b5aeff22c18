package rootcast.trackrecord;

/**
 * What a forecast of a number costs once the number is known; 0 is perfect, less is better, in the number's own unit.
 *
 * <p>Both are proper: nobody gains by stating another forecast than what he believes.
 *
 * <p>Source: Koenker and Bassett 1978, Econometrica 46:33-50 (pinball); Gneiting and Raftery 2007, J. Amer. Statist.
 * Assoc. 102:359-378, eq. 21 (continuous ranked probability score of equally likely values).
 */
public final class Scores {

    private Scores() {}

    /** q·(y − f) if the outcome y is over the forecast f of its quantile q, else (1 − q)·(f − y). */
    public static double pinball(double quantile, double forecast, double outcome) {
        return outcome >= forecast ? quantile * (outcome - forecast) : (1 - quantile) * (forecast - outcome);
    }

    /** E|X − y| − ½·E|X − X′| for X one of the values, all equally likely. */
    public static double crps(double[] equallyLikely, double outcome) {
        int n = equallyLikely.length;
        double toOutcome = 0;
        double apart = 0;
        for (double one : equallyLikely) {
            toOutcome += Math.abs(one - outcome);
            for (double other : equallyLikely) {
                apart += Math.abs(one - other);
            }
        }
        return toOutcome / n - apart / (2.0 * n * n);
    }
}
