package rootcast.outlook;

import java.time.Instant;
import java.util.List;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.Variation;

/**
 * When a batch was expected to be ready at a moment, to be held against what was seen of it later.
 *
 * <p>Nobody sees the moment itself. So what is seen is told as a likelihood: how likely the looks and the entry since then are, had the
 * batch been ready at each of the model's quantiles and run as it did there. By when nobody had entered it is known at the outset, and
 * is not said twice.
 */
public final class Foretold {

    /** Quantiles that it is told at, the earliest first; standard normal scores rise evenly. */
    public static final int QUANTILES = RateBelief.NODES;

    private static final Stage READY = Stage.READY;
    private static final int LAST = StagePath.STAGES - 1;

    private final long nowMillis;
    private final long[] millis;
    private final RateBelief rate;
    private final Variation variation;
    private final long incompleteAt;

    /**
     * @param millis       by node of the belief
     * @param rate         of the last stage, by node of the date
     * @param incompleteAt when a look last found it not ready; 0 if none did
     */
    Foretold(long nowMillis, long[] millis, RateBelief rate, Variation variation, long incompleteAt) {
        this.nowMillis = nowMillis;
        this.millis = millis;
        this.rate = rate;
        this.variation = variation;
        this.incompleteAt = incompleteAt;
    }

    /** Standard normal score of a quantile. */
    public static double score(int quantile) {
        return -RateBelief.normalQuantile(QUANTILES - 1 - quantile);
    }

    public Instant foretoldAt() {
        return Instant.ofEpochMilli(nowMillis);
    }

    /** From the moment that it was foretold at to the middling date; under 0 if that had passed. Infinite if it never comes. */
    public double leadDays() {
        long middle = millis[RateBelief.median()];
        return middle == DevelopmentCurve.NEVER
                ? Double.POSITIVE_INFINITY
                : (middle - nowMillis) / DateSpread.DAY_MILLIS;
    }

    /**
     * By quantile, relative to the likeliest.
     *
     * @param later  the batch once it was entered ready
     * @param houses as they turned out
     */
    public double[] likelihood(BatchHistory later, CropProfile profile, HouseCurves houses) {
        List<BatchHistory.Look> since = later.looks().stream()
                .filter(look -> look.stage() == READY && look.at().toEpochMilli() > nowMillis)
                .toList();
        RateEvidence evidence =
                new RateEvidence(later.withLooks(since), new StagePath(later, profile, houses), profile);
        double[] logs = new double[QUANTILES];
        double most = Double.NEGATIVE_INFINITY;
        for (int quantile = 0; quantile < QUANTILES; quantile++) {
            int node = QUANTILES - 1 - quantile;
            logs[quantile] =
                    evidence.logOfEnd(LAST, millis[node], rate.multiplier(node)) - Math.log(unseenShare(millis[node]));
            most = Math.max(most, logs[quantile]);
        }
        for (int quantile = 0; quantile < QUANTILES; quantile++) {
            logs[quantile] = Math.exp(logs[quantile] - most);
        }
        return logs;
    }

    private double unseenShare(long endMillis) {
        return Math.max(
                RateEvidence.ODD_SHARE, NotEntered.share(variation, Math.max(endMillis, incompleteAt), nowMillis));
    }
}
