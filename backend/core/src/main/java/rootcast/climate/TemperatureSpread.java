package rootcast.climate;

import java.util.Arrays;
import java.util.stream.LongStream;

/**
 * How far the medium of one house may run from its daily pattern in the days to come.
 *
 * <p>The house's daily means are taken as a stationary process whose correlation falls by e in {@value
 * #PERSISTENCE_DAYS} days and whose standard deviation S is that of its own daily means over the last twelve weeks,
 * changes of the set-point taken out and single wild days limited. The forecast is the mean of the last seven days, so the error of the mean over the next L
 * days has the variance V(L) + V(7) − 2 C, with V(a) = 2 S² τ/a² · (a − τ(1 − e^(−a/τ))) and C = S² τ²/(7 L) · (1 −
 * e^(−7/τ)) (1 − e^(−L/τ)): as a sum over the days it grows with the lead, and the mean of a day far off may be S away.
 *
 * <p>A house with fewer than a week of daily means is filled up with days {@value #USUAL_SPREAD_C} °C from their mean
 * (common practice, no source).
 *
 * <p>Source: block averages of an Ornstein-Uhlenbeck process, e.g. Gillespie 1996, Phys. Rev. E 54:2084-2091; that it
 * describes a house is our assumption, checked against four years of real weather in RollingForecastTest.
 */
public final class TemperatureSpread {

    static final double PERSISTENCE_DAYS = 10;
    static final double USUAL_SPREAD_C = 0.7;

    private static final int HOURS = 24;
    private static final int OLDEST_DAYS = 84;
    private static final int ENOUGH_DAYS = 7;
    private static final double PATTERN_DAYS = 7;

    /** A day with fewer measured hours has no mean: its afternoon alone would pass for a warm day. */
    private static final int ENOUGH_HOURS = 18;

    /** A day farther off than this many standard deviations, such as one of a heating failure, counts as so far off. */
    private static final double FAR_SD = 3;

    private static final double LEAST_SD_C = 0.5;

    /** Of a normal distribution: 1 / its 75 % point. */
    private static final double SD_PER_MEDIAN_OFF = 1.4826;

    private static final int STEPS_PER_DAY = 4;
    private static final int MOST_DAYS = 400;

    /** The error for S = 1 at every quarter of a day; straight between, and as at the end beyond. */
    private static final double[] UNIT = new double[MOST_DAYS * STEPS_PER_DAY + 1];

    static {
        Arrays.setAll(UNIT, i -> unit(Math.max(i, 1e-3) / STEPS_PER_DAY));
    }

    private final double spreadC;

    private TemperatureSpread(double spreadC) {
        this.spreadC = spreadC;
    }

    /** From the whole days (UTC) before {@code dayStartHour}, the first hour of a day. */
    public static TemperatureSpread before(HourlySeries series, long dayStartHour, SetpointPlan plan) {
        double[] meansC = LongStream.rangeClosed(1, OLDEST_DAYS)
                .mapToDouble(day -> dayMeanC(series, dayStartHour - day * HOURS, dayStartHour - 1, plan))
                .filter(meanC -> !Double.isNaN(meanC))
                .toArray();
        double usualC = median(meansC);
        double[] offC =
                Arrays.stream(meansC).map(meanC -> Math.abs(meanC - usualC)).toArray();
        double farC = FAR_SD * Math.max(LEAST_SD_C, SD_PER_MEDIAN_OFF * median(offC));
        double squares = Arrays.stream(offC)
                .map(off -> Math.min(off, farC))
                .map(off -> off * off)
                .sum();
        int assumed = Math.max(0, ENOUGH_DAYS - meansC.length);
        return new TemperatureSpread(Math.sqrt(
                (squares + assumed * USUAL_SPREAD_C * USUAL_SPREAD_C) / (Math.max(meansC.length, ENOUGH_DAYS) - 1)));
    }

    private static double median(double[] values) {
        double[] sorted = Arrays.stream(values).sorted().toArray();
        int middle = sorted.length / 2;
        if (sorted.length == 0) {
            return 0;
        }
        return sorted.length % 2 == 1 ? sorted[middle] : (sorted[middle - 1] + sorted[middle]) / 2;
    }

    private static double dayMeanC(HourlySeries series, long start, long last, SetpointPlan plan) {
        double sumC = 0;
        int hours = 0;
        for (long hour = start; hour < start + HOURS; hour++) {
            if (series.isMeasured(hour)) {
                sumC += series.meanC(hour) + plan.rise(last, hour).orElse(0);
                hours++;
            }
        }
        return hours < ENOUGH_HOURS ? Double.NaN : sumC / hours;
    }

    /** Standard deviation of one day's mean, far from now, °C. */
    public double spreadC() {
        return spreadC;
    }

    /** Standard deviation of the mean over the next {@code days}, as forecast from the daily pattern, °C. */
    public double ofMeanOver(double days) {
        double step = Math.min(days * STEPS_PER_DAY, UNIT.length - 1.001);
        int i = (int) step;
        return spreadC * (UNIT[i] + (step - i) * (UNIT[i + 1] - UNIT[i]));
    }

    private static double unit(double days) {
        double covariance =
                PERSISTENCE_DAYS * PERSISTENCE_DAYS / (PATTERN_DAYS * days) * forgotten(PATTERN_DAYS) * forgotten(days);
        return Math.sqrt(blockVariance(days) + blockVariance(PATTERN_DAYS) - 2 * covariance);
    }

    private static double blockVariance(double days) {
        return 2 * PERSISTENCE_DAYS / (days * days) * (days - PERSISTENCE_DAYS * forgotten(days));
    }

    private static double forgotten(double days) {
        return -Math.expm1(-days / PERSISTENCE_DAYS);
    }
}
