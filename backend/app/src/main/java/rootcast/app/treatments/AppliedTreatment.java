package rootcast.app.treatments;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import rootcast.rounds.Treatment;

/**
 * A treatment as somebody recorded it.
 *
 * @param rate           as the label gives it, in its own words
 * @param appliedBy      who applied it
 * @param details        what local rules may ask for besides
 * @param reversedAt     null unless it was a mistake and counts as never recorded
 * @param reversedBy     who said so
 * @param reversalReason why
 */
public record AppliedTreatment(
        Treatment treatment,
        String site,
        String rate,
        String appliedBy,
        TreatmentDetails details,
        @Nullable String note,
        Instant recordedAt,
        String recordedBy,
        @Nullable Instant reversedAt,
        @Nullable String reversedBy,
        @Nullable String reversalReason) {

    public boolean isInForce() {
        return reversedAt == null;
    }
}
