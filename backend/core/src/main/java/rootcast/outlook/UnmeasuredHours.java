package rootcast.outlook;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import rootcast.climate.HourSource;
import rootcast.climate.HourlySeries;

/**
 * The hours without a reading of one batch, over all houses that it stood in.
 *
 * <p>They count as one block that ran {@value #BRIDGED_C} °C from what was taken, {@value #UNMEASURED_C} °C where nothing
 * near was measured (common practice, no source).
 */
final class UnmeasuredHours {

    static final double BRIDGED_C = 1.0;
    static final double UNMEASURED_C = 2.0;

    private static final double HOURS_PER_DAY = 24;

    private final List<Placed> placements = new ArrayList<>();

    UnmeasuredHours(BatchHistory history, HouseCurves houses) {
        List<BatchHistory.Placement> stood = history.placements();
        for (int i = 0; i < stood.size(); i++) {
            Instant from = stood.get(i).fromInclusive();
            placements.add(new Placed(
                    HourlySeries.hourOf(from),
                    i + 1 < stood.size() ? HourlySeries.hourOf(stood.get(i + 1).fromInclusive()) : Long.MAX_VALUE,
                    houses.bridged(stood.get(i).house(), from)));
        }
    }

    private record Placed(long fromHour, long untilHour, BridgedHours bridged) {

        long begin(Instant from) {
            return Math.max(fromHour, HourlySeries.hourOf(from));
        }

        long end(Instant until) {
            return Math.min(untilHour, HourlySeries.hourOf(until));
        }

        boolean isWithin(Instant from, Instant until) {
            return begin(from) < end(until);
        }
    }

    int between(Instant from, Instant until) {
        int missing = 0;
        for (Placed each : placements) {
            if (each.isWithin(from, until)) {
                missing += each.bridged.missing(each.begin(from), each.end(until));
            }
        }
        return missing;
    }

    /** How far off they may have been, each by itself, in degree-days. */
    double degreeDays(Instant from, Instant until) {
        double degreeHours = 0;
        for (Placed each : placements) {
            int missing = each.isWithin(from, until) ? each.bridged.missing(each.begin(from), each.end(until)) : 0;
            if (missing > 0) {
                int unmeasured = each.bridged.unmeasured(each.begin(from), each.end(until));
                degreeHours += BRIDGED_C * (missing - unmeasured) + UNMEASURED_C * unmeasured;
            }
        }
        return degreeHours / HOURS_PER_DAY;
    }

    /** What stood in for them. */
    Set<HourSource> stoodIn(Instant from, Instant until) {
        Set<HourSource> sources = EnumSet.noneOf(HourSource.class);
        placements.stream()
                .filter(each -> each.isWithin(from, until))
                .forEach(each -> sources.addAll(each.bridged.sources(each.begin(from), each.end(until))));
        return Collections.unmodifiableSet(sources);
    }
}
