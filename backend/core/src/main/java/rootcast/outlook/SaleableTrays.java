package rootcast.outlook;

import rootcast.crop.TrayFormat;
import rootcast.numerics.CountDistribution;

/**
 * Whole trays that a batch gives once it is ready and patched: floor(living plants / sale count).
 *
 * <p>The low figure is p10: there are at least so many with a probability of 0.9 or more.
 */
public final class SaleableTrays {

    private final CountDistribution plants;
    private final int saleCount;

    SaleableTrays(CountDistribution plants, TrayFormat format) {
        this.plants = plants;
        this.saleCount = format.saleCount();
    }

    /** P(at least this many trays); 1 for none or fewer. */
    public double atLeast(int trays) {
        long needed = (long) trays * saleCount;
        return needed > plants.last() ? 0 : plants.atLeast((int) Math.max(0, needed));
    }

    /** More cannot be. */
    public int most() {
        return plants.last() / saleCount;
    }

    /** The least number of trays that is not exceeded with at least this probability. */
    public int quantile(double probability) {
        return plants.quantile(probability) / saleCount;
    }

    public int p10() {
        return quantile(0.1);
    }

    public int p50() {
        return quantile(0.5);
    }

    public int p90() {
        return quantile(0.9);
    }

    public double mean() {
        double sum = 0;
        for (int trays = most(); trays >= 1; trays--) {
            sum += atLeast(trays);
        }
        return sum;
    }
}
