package rootcast.outlook;

import static rootcast.outlook.DevelopmentCurve.NEVER;

import rootcast.climate.TemperatureSpread;

/**
 * Widens the dates of one event by what the rate multiplier does not know: the temperatures to come and the hours that
 * nobody measured.
 *
 * <p>Let L be the days from now to the event at a node of the belief. Temperature multiplies L by e^ε with ε normal; the
 * nodes' own ln L and ε are added as independent normal variables are, in squares: at standard normal quantile z the node
 * moves from m + d to m ± √(d² + (s z)²), m being the median's ln L. Unmeasured hours shift the date by days and are
 * added in squares after that. The median stays. Where all are normal the sum is exact.
 *
 * <p>s = κ σ(L), with κ the change of ln rate with a degree and σ(L) the error of the forecast mean over L days (see {@link
 * TemperatureSpread}). The hours without reading count as one block that ran {@value #BRIDGED_C} °C from what was taken,
 * {@value #UNMEASURED_C} °C where nothing near was measured (common practice, no source).
 */
final class DateSpread {

    static final double BRIDGED_C = 1.0;
    static final double UNMEASURED_C = 2.0;

    static final double DAY_MILLIS = 86_400_000;

    private final long nowMillis;
    private final TemperatureSpread temperature;
    private final double logRatePerC;
    private final double gapDays;

    /**
     * @param logRatePerC κ, the mean over the days to come
     * @param gapDays     standard deviation that unmeasured hours add, days
     */
    DateSpread(long nowMillis, TemperatureSpread temperature, double logRatePerC, double gapDays) {
        this.nowMillis = nowMillis;
        this.temperature = temperature;
        this.logRatePerC = logRatePerC;
        this.gapDays = gapDays;
    }

    /** @param millis by node of the belief, so the slowest batch and the latest date come first; changed in place */
    void widen(long[] millis) {
        int median = RateBelief.median();
        long middle = millis[median];
        if (middle == NEVER || middle <= nowMillis) {
            return;
        }
        for (int node = median - 1; node >= 0; node--) {
            millis[node] = Math.max(widened(millis[node], middle, node), millis[node + 1]);
        }
        for (int node = median + 1; node < RateBelief.NODES; node++) {
            millis[node] = Math.min(widened(millis[node], middle, node), millis[node - 1]);
        }
    }

    /** As {@link #widen} makes it, of the three nodes that are shown alone. */
    DateRange widenedRange(long[] millis) {
        long middle = millis[RateBelief.median()];
        return new DateRange(
                DateDistribution.instant(widened(millis[RateBelief.P90], middle, RateBelief.P90)),
                DateDistribution.instant(middle),
                DateDistribution.instant(widened(millis[RateBelief.P10], middle, RateBelief.P10)));
    }

    private long widened(long at, long middle, int node) {
        if (at == NEVER || at <= nowMillis) {
            return at;
        }
        double leadDays = (at - nowMillis) / DAY_MILLIS;
        double middleDays = (middle - nowMillis) / DAY_MILLIS;
        double warmth = logRatePerC * temperature.ofMeanOver(leadDays);
        double z = RateBelief.normalQuantile(node);
        double own = Math.log(leadDays / middleDays);
        double log = Math.sqrt(own * own + warmth * warmth * z * z);
        // Not expm1, which costs several times as much: what it saves is far below a millisecond here.
        double offset = middleDays * (Math.exp(z < 0 ? log : -log) - 1);
        double days = Math.sqrt(offset * offset + gapDays * gapDays * z * z);
        long widened = middle + Math.round((z < 0 ? days : -days) * DAY_MILLIS);
        // It has not happened yet at this rate, whatever the hours that nobody measured were like.
        return Math.max(widened, nowMillis);
    }
}
