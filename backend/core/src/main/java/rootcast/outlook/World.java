package rootcast.outlook;

import org.apache.commons.statistics.distribution.NormalDistribution;

/**
 * One way in which all that is uncertain may come out, the same for every batch: each name has its own draws in it, and the same
 * ones whoever asks, so that what two batches of a house have in common is the same draw.
 *
 * <p>A draw is a hash of the world's number and the name (the finalizer of SplitMix64: Steele, Lea and Flood 2014, Proc. OOPSLA 453-472), so
 * it needs no state and no order. The date of a batch is placed by a normal variable that is a sum of the house's, the crop's and the batch's own, weighed by
 * the shares of the variance: a Gaussian copula.
 *
 * @param number of the world, from 0
 */
public record World(int number) {

    private static final NormalDistribution NORMAL = NormalDistribution.of(0, 1);
    private static final double TO_UNIT = 0x1.0p-53;
    private static final long GOLDEN_GAMMA = 0x9E3779B97F4A7C15L;

    /** Places of one batch in this world. */
    record OfBatch(double faster, double cellsApart, double alive, double cells) {}

    /** Probability that the batch's date is no later than in this world, its cells no further apart, and so on: each even from 0 to 1. */
    OfBatch of(String batch, String crop, SharedDoubt shared) {
        double faster = Math.sqrt(shared.ofWeather()) * normal("house", shared.house())
                + Math.sqrt(shared.ofDays()) * normal("crop", crop)
                + Math.sqrt(shared.own()) * normal("batch", batch);
        return new OfBatch(
                NORMAL.cumulativeProbability(faster),
                uniform("apart", batch),
                uniform("alive", batch),
                normal("cells", batch));
    }

    private double normal(String what, String name) {
        return NORMAL.inverseCumulativeProbability(uniform(what, name));
    }

    /** Strictly between 0 and 1. */
    private double uniform(String what, String name) {
        long hash = GOLDEN_GAMMA * (number + 1L);
        hash = mixed(hash + hashOf(what));
        hash = mixed(hash + hashOf(name));
        return ((hash >>> 11) + 0.5) * TO_UNIT;
    }

    private static long hashOf(String text) {
        long hash = text.length();
        for (int i = 0; i < text.length(); i++) {
            hash = mixed(hash + text.charAt(i) + GOLDEN_GAMMA);
        }
        return hash;
    }

    private static long mixed(long bits) {
        long z = (bits ^ (bits >>> 30)) * 0xBF58476D1CE4E5B9L;
        z = (z ^ (z >>> 27)) * 0x94D049BB133111EBL;
        return z ^ (z >>> 31);
    }
}
