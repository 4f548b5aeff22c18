package rootcast.learning;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import rootcast.climate.FilledSeries;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.DevelopmentRate;
import rootcast.outlook.HouseCurves;

/**
 * How long a batch stood at which medium temperature: days by {@value #WIDTH_C} °C.
 *
 * <p>The order of the hours is left out, so that development for any cardinals is one short sum.
 */
public final class WarmDays {

    static final WarmDays NONE = new WarmDays(0, new double[0]);

    private static final double WIDTH_C = 0.1;
    private static final int LOWEST = -500;
    private static final int BINS = 1_300;
    private static final long HOUR_MILLIS = 3_600_000;
    private static final double DAY_MILLIS = 86_400_000;

    private final int first;
    private final double[] days;

    private WarmDays(int first, double[] days) {
        this.first = first;
        this.days = days;
    }

    /**
     * @param referenceC stands in where nothing at all is known of a house
     */
    static WarmDays between(
            List<Placement> placements, HouseCurves houses, double referenceC, Instant from, Instant until) {
        Tally tally = new Tally();
        for (int i = 0; i < placements.size(); i++) {
            Instant begin = later(from, placements.get(i).fromInclusive());
            Instant end = i + 1 < placements.size()
                    ? earlier(until, placements.get(i + 1).fromInclusive())
                    : until;
            if (begin.isBefore(end)) {
                tally.add(
                        houses.climateOf(placements.get(i).house()),
                        referenceC,
                        begin.toEpochMilli(),
                        end.toEpochMilli());
            }
        }
        return tally.result();
    }

    /** A constant temperature. */
    public static WarmDays at(double celsius, double days) {
        Tally tally = new Tally();
        tally.add(celsius, days);
        return tally.result();
    }

    /** Rates by temperature, computed once for many batches. */
    static final class Rates {
        private final double[] perDay = new double[BINS];

        Rates(DevelopmentRate rate) {
            Arrays.setAll(perDay, bin -> rate.perDay((LOWEST + bin) * WIDTH_C));
        }
    }

    /** Reference-days that the days gave. */
    double gained(Rates rates) {
        double sum = 0;
        for (int i = 0; i < days.length; i++) {
            sum += days[i] * rates.perDay[first - LOWEST + i];
        }
        return sum;
    }

    /** Reference-days per day; 0 for no time at all. */
    double meanRate(Rates rates) {
        double whole = days();
        return whole == 0 ? 0 : gained(rates) / whole;
    }

    double days() {
        return Arrays.stream(days).sum();
    }

    double meanC() {
        double sum = 0;
        for (int i = 0; i < days.length; i++) {
            sum += days[i] * (first + i) * WIDTH_C;
        }
        return sum / days();
    }

    private static Instant later(Instant a, Instant b) {
        return a.isAfter(b) ? a : b;
    }

    private static Instant earlier(Instant a, Instant b) {
        return a.isBefore(b) ? a : b;
    }

    private static final class Tally {
        private final double[] days = new double[BINS];
        private int low = BINS;
        private int high = -1;

        void add(FilledSeries climate, double referenceC, long fromMillis, long untilMillis) {
            long at = fromMillis;
            while (at < untilMillis) {
                long hour = Math.floorDiv(at, HOUR_MILLIS);
                long next = Math.min(untilMillis, (hour + 1) * HOUR_MILLIS);
                add(climate.celsius(hour, referenceC), (next - at) / DAY_MILLIS);
                at = next;
            }
        }

        void add(double celsius, double some) {
            int bin = (int) Math.max(0, Math.min(BINS - 1, Math.round(celsius / WIDTH_C) - LOWEST));
            days[bin] += some;
            low = Math.min(low, bin);
            high = Math.max(high, bin);
        }

        WarmDays result() {
            return low > high ? NONE : new WarmDays(low + LOWEST, Arrays.copyOfRange(days, low, high + 1));
        }
    }
}
