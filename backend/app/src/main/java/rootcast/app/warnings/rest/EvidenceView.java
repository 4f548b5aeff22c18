package rootcast.app.warnings.rest;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.app.warnings.SeenOfWarning;

/**
 * What a warning rests on.
 *
 * @param hours    what its rule saw, in the warning's unit; empty for what rests on no value
 * @param lastDone when somebody last closed a check that settles it; null if nobody has
 */
record EvidenceView(List<SeenHour> hours, @Nullable Instant lastDone) {

    /** @param at start of the hour */
    record SeenHour(Instant at, double value, double limit) {}

    static EvidenceView of(SeenOfWarning seen) {
        return new EvidenceView(
                seen.hours().stream()
                        .map(hour -> new SeenHour(hour.at(), hour.value(), hour.limit()))
                        .toList(),
                seen.lastDone());
    }
}
