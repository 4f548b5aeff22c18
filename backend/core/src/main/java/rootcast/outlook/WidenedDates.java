package rootcast.outlook;

import java.time.Instant;
import java.util.Arrays;
import java.util.function.LongToDoubleFunction;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Calibration;
import rootcast.crop.CropProfile;

/**
 * The dates of one batch's stages as of a moment, widened by what its rate does not know: temperatures to come and hours that nobody
 * measured ({@link DateSpread}), and what the crop's record says of such ranges ({@link RecordedRange}).
 */
final class WidenedDates {

    private static final int LAST = StagePath.STAGES - 1;

    private final BatchHistory history;
    private final CropProfile profile;
    private final HouseCurves houses;
    private final StagePath path;
    private final UnmeasuredHours unmeasured;
    private final long nowMillis;
    private final long[] medianEnds;

    /** Null once the last stage was seen to end. */
    private final @Nullable DateSpread ofReady;

    /** @param medianEnds by stage, at the median of the belief */
    WidenedDates(
            BatchHistory history,
            CropProfile profile,
            HouseCurves houses,
            StagePath path,
            UnmeasuredHours unmeasured,
            long[] medianEnds) {
        this.history = history;
        this.profile = profile;
        this.houses = houses;
        this.path = path;
        this.unmeasured = unmeasured;
        this.nowMillis = houses.asOf().toEpochMilli();
        this.medianEnds = medianEnds;
        this.ofReady = path.isSeen(LAST) ? null : spread(LAST);
    }

    /** @param ends of the last stage by node, before they are widened */
    SharedDoubt shared(long[] ends) {
        String house = history.houseAt(medianEnds[LAST]);
        if (ofReady == null) {
            return new SharedDoubt(house, 0, 0);
        }
        DateSpread.Shares shares = ofReady.shares(ends);
        return new SharedDoubt(house, shares.weather(), shares.rate() * profile.daysShareOfDoubt());
    }

    /** @param ends of the last stage by node; changed in place */
    void ready(long[] ends) {
        if (ofReady == null) {
            Arrays.fill(ends, path.seenAt(LAST));
        } else {
            ofReady.widen(ends);
        }
    }

    /** What the crop's record says at this lead; null if it says nothing, or the batch was seen ready. */
    Calibration.@Nullable Knot record() {
        Calibration calibration = profile.calibration();
        return calibration.isNone() || ofReady == null
                ? null
                : calibration.at((medianEnds[LAST] - nowMillis) / DateSpread.DAY_MILLIS);
    }

    /**
     * Of a stage that others follow, of which no more is told than these three dates. What the record says of ready moves them
     * alike, so stages stay in order.
     */
    DateRange range(int stage, long[] ends, @Nullable RecordedRange recorded) {
        if (path.isSeen(stage)) {
            Instant seen = Instant.ofEpochMilli(path.seenAt(stage));
            return new DateRange(seen, seen, seen);
        }
        DateSpread spread = spread(stage);
        if (recorded == null) {
            return spread.widenedRange(ends);
        }
        spread.widen(ends);
        recorded.move(ends, earliest(stage));
        return DateDistribution.range(ends);
    }

    /** A stage that was not seen to end had not ended by then. */
    long earliest(int stage) {
        return Math.max(lastSeenBefore(stage), path.incompleteAt(stage));
    }

    /** The stages between now and the end of one, each weighed by the time it takes; once that has passed, the last alone. */
    private DateSpread spread(int last) {
        double lead = medianEnds[last] - nowMillis;
        double logRatePerC = lead > 0 ? 0 : path.logRatePerC(last);
        for (int stage = 0; stage <= last && lead > 0; stage++) {
            double from = Math.max(nowMillis, path.startOf(stage, medianEnds));
            double share = Math.max(0, medianEnds[stage] - from) / lead;
            logRatePerC += share * path.logRatePerC(stage);
        }
        return new DateSpread(
                nowMillis,
                houses.spreadOf(history.houseAt(medianEnds[last])),
                logRatePerC,
                earliest(last),
                unmeasuredDays(last));
    }

    /** By the moment that they are counted to; null if there is no such hour. */
    private @Nullable LongToDoubleFunction unmeasuredDays(int last) {
        long since = lastSeenBefore(last);
        if (unmeasured.between(Instant.ofEpochMilli(since), Instant.ofEpochMilli(nowMillis)) == 0) {
            return null;
        }
        double before = 0;
        long begin = since;
        for (int stage = 0; stage < last && begin < nowMillis; stage++) {
            long end = Math.min(nowMillis, medianEnds[stage]);
            if (end > begin) {
                before += daysOff(stage, begin, end);
                begin = end;
            }
        }
        double earlierDays = before;
        long lastBegin = begin;
        double untilNow = earlierDays + daysOff(last, lastBegin, nowMillis);
        return until -> until >= nowMillis ? untilNow : earlierDays + daysOff(last, lastBegin, until);
    }

    private double daysOff(int stage, long from, long until) {
        return path.logRatePerC(stage) * unmeasured.degreeDays(Instant.ofEpochMilli(from), Instant.ofEpochMilli(until));
    }

    /** What happened before the last end that was seen does not matter to the dates to come. */
    private long lastSeenBefore(int stage) {
        long at = history.stuckAt().toEpochMilli();
        for (int earlier = 0; earlier < stage; earlier++) {
            at = path.isSeen(earlier) ? path.seenAt(earlier) : at;
        }
        return at;
    }
}
