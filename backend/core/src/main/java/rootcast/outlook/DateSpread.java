package rootcast.outlook;

import static rootcast.outlook.DevelopmentCurve.NEVER;

import java.util.function.LongToDoubleFunction;
import org.jspecify.annotations.Nullable;
import rootcast.climate.TemperatureSpread;

/**
 * Widens the dates of one event by what the rate multiplier does not know: the temperatures to come and the hours that
 * nobody measured.
 *
 * <p>At standard normal quantile z a node of the belief lies d days from the median. Temperature multiplies the days L that
 * are still to come by e^ε, ε normal with standard deviation s, and moves the date by w = L · |e^(−s z) − 1|; a day that has
 * passed it moves no more. Unmeasured hours move it by g z days, counted up to the node's own date. All are added as independent
 * normal variables are, in squares: √(d² + w² + (g z)²). Of the median's days the part d · d/√(d² + w²) belongs to the rate at that
 * quantile, so L is that of a batch so much slower or faster. The median stays. Exact where all are normal.
 *
 * <p>Nothing here changes when a date or the median passes: as an hour ends it goes over from those to come to those
 * measured, or not measured.
 *
 * <p>s = κ σ(L), with κ the change of ln rate with a degree and σ(L) the error of the forecast mean over L days (see {@link
 * TemperatureSpread}); g: {@link UnmeasuredHours}.
 */
final class DateSpread {

    static final double DAY_MILLIS = 86_400_000;

    private final long nowMillis;
    private final TemperatureSpread temperature;
    private final double logRatePerC;
    private final long earliest;
    private final @Nullable LongToDoubleFunction unmeasuredDays;

    /**
     * @param logRatePerC    κ, the mean over the days to come
     * @param earliest       no date lies before: the event was seen not to have happened yet
     * @param unmeasuredDays standard deviation, days, that unmeasured hours up to a moment add; null if there are none
     */
    DateSpread(
            long nowMillis,
            TemperatureSpread temperature,
            double logRatePerC,
            long earliest,
            @Nullable LongToDoubleFunction unmeasuredDays) {
        this.nowMillis = nowMillis;
        this.temperature = temperature;
        this.logRatePerC = logRatePerC;
        this.earliest = earliest;
        this.unmeasuredDays = unmeasuredDays;
    }

    /** @param millis by node of the belief, so the slowest batch and the latest date come first; changed in place */
    void widen(long[] millis) {
        int median = RateBelief.median();
        long middle = millis[median];
        if (middle == NEVER) {
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
        if (middle == NEVER) {
            return DateDistribution.range(millis);
        }
        return new DateRange(
                DateDistribution.instant(widened(millis[RateBelief.P90], middle, RateBelief.P90)),
                DateDistribution.instant(middle),
                DateDistribution.instant(widened(millis[RateBelief.P10], middle, RateBelief.P10)));
    }

    /** What the variance of a date is made of, each as a share; nothing of either where the date is certain. */
    record Shares(double rate, double weather) {}

    /** At the 90 % point of the rate, before {@link #widen}. */
    Shares shares(long[] millis) {
        long middle = millis[RateBelief.median()];
        long at = millis[RateBelief.P90];
        if (middle == NEVER) {
            return new Shares(0, 0);
        }
        double z = RateBelief.normalQuantile(RateBelief.P90);
        double own = (at - middle) / DAY_MILLIS;
        double warmth = warmthDays(at, middle, own, z);
        double gap = unmeasuredDays == null ? 0 : unmeasuredDays.applyAsDouble(at) * z;
        double all = own * own + warmth * warmth + gap * gap;
        return all == 0 ? new Shares(0, 0) : new Shares(own * own / all, warmth * warmth / all);
    }

    private long widened(long at, long middle, int node) {
        if (at == NEVER) {
            return at;
        }
        double z = RateBelief.normalQuantile(node);
        double own = (at - middle) / DAY_MILLIS;
        double warmth = warmthDays(at, middle, own, z);
        double gap = unmeasuredDays == null ? 0 : unmeasuredDays.applyAsDouble(at) * z;
        double days = Math.sqrt(own * own + warmth * warmth + gap * gap);
        return Math.max(middle + Math.round((z < 0 ? days : -days) * DAY_MILLIS), Math.min(earliest, middle));
    }

    private double warmthDays(long at, long middle, double own, double z) {
        double leadDays = (at - nowMillis) / DAY_MILLIS;
        if (leadDays <= 0) {
            return 0;
        }
        double middleDays = (middle - nowMillis) / DAY_MILLIS;
        // Not expm1, which costs several times as much: what it saves is far below a millisecond here.
        double ofADay = Math.abs(Math.exp(-logRatePerC * temperature.ofMeanOver(leadDays) * z) - 1);
        double whole = leadDays * ofADay;
        double ofRate = own == 0 ? 0 : own * Math.abs(own) / Math.sqrt(own * own + whole * whole);
        return ofADay * Math.max(0, middleDays + ofRate);
    }
}
