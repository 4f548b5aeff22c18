package rootcast.outlook;

import java.util.Arrays;
import java.util.EnumSet;
import java.util.Set;
import rootcast.climate.FilledSeries;
import rootcast.climate.HourSource;

/**
 * How many hours of one house had no reading, and what stood in for them, summed from a fixed hour on: the missing hours
 * of any window are a difference of two sums.
 *
 * <p>Not safe for use by several threads at once.
 */
final class BridgedHours {

    private static final HourSource[] STOPGAPS = {
        HourSource.NEIGHBOURS, HourSource.SAME_HOUR, HourSource.SETPOINT, HourSource.REFERENCE
    };

    private long firstHour;
    private int pastHours;

    /** {@code sums[s][i]} is how many of the first i hours were bridged by STOPGAPS[s]. */
    private final int[][] sums = new int[STOPGAPS.length][1];

    /** How many of the first i hours were missing, whatever stood in: asked for far more often than by what. */
    private int[] missing = new int[1];

    BridgedHours(FilledSeries filled, long firstHour) {
        beginAt(firstHour, filled);
    }

    long firstHour() {
        return firstHour;
    }

    /** Rebuilds the sums from an hour that may be earlier than before. */
    void beginAt(long hour, FilledSeries filled) {
        firstHour = hour;
        pastHours = 0;
        update(hour, filled);
    }

    /** Takes over everything that may have changed from {@code fromHour} on. */
    void update(long fromHour, FilledSeries filled) {
        int from = (int) Math.max(0, Math.min(fromHour - firstHour, pastHours));
        pastHours = (int) Math.max(0, filled.nextHour() - firstHour);
        for (int s = 0; s < STOPGAPS.length; s++) {
            if (sums[s].length <= pastHours) {
                sums[s] = Arrays.copyOf(sums[s], pastHours + 1 + pastHours / 2);
            }
        }
        if (missing.length <= pastHours) {
            missing = Arrays.copyOf(missing, pastHours + 1 + pastHours / 2);
        }
        for (int i = from; i < pastHours; i++) {
            HourSource source = filled.sourceOf(firstHour + i);
            missing[i + 1] = missing[i] + (source == HourSource.MEASURED ? 0 : 1);
            for (int s = 0; s < STOPGAPS.length; s++) {
                sums[s][i + 1] = sums[s][i] + (source == STOPGAPS[s] ? 1 : 0);
            }
        }
    }

    int missing(long fromHourInclusive, long untilHourExclusive) {
        return between(missing, fromHourInclusive, untilHourExclusive);
    }

    /** Hours of the window that nothing near was measured for. */
    int unmeasured(long fromHourInclusive, long untilHourExclusive) {
        return bridgedBy(2, fromHourInclusive, untilHourExclusive)
                + bridgedBy(3, fromHourInclusive, untilHourExclusive);
    }

    Set<HourSource> sources(long fromHourInclusive, long untilHourExclusive) {
        Set<HourSource> sources = EnumSet.noneOf(HourSource.class);
        for (int s = 0; s < STOPGAPS.length; s++) {
            if (bridgedBy(s, fromHourInclusive, untilHourExclusive) > 0) {
                sources.add(STOPGAPS[s]);
            }
        }
        return sources;
    }

    private int bridgedBy(int stopgap, long fromHourInclusive, long untilHourExclusive) {
        return between(sums[stopgap], fromHourInclusive, untilHourExclusive);
    }

    private int between(int[] sums, long fromHourInclusive, long untilHourExclusive) {
        int from = index(fromHourInclusive);
        int until = index(untilHourExclusive);
        return until <= from ? 0 : sums[until] - sums[from];
    }

    private int index(long hour) {
        return (int) Math.max(0, Math.min(hour - firstHour, pastHours));
    }
}
