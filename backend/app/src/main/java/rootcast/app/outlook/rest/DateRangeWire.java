package rootcast.app.outlook.rest;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.DateRange;

/** An early, middling and late date; null for one that is not in sight at the temperatures expected. */
public record DateRangeWire(
        @Nullable Instant p10,
        @Nullable Instant p50,
        @Nullable Instant p90) {

    public static DateRangeWire of(DateRange range) {
        return new DateRangeWire(seen(range.p10()), seen(range.p50()), seen(range.p90()));
    }

    public static @Nullable Instant seen(Instant at) {
        return at.equals(DateDistribution.NEVER) ? null : at;
    }
}
