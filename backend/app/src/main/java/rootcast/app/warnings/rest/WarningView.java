package rootcast.app.warnings.rest;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.warnings.WarningText;
import rootcast.app.warnings.WrittenWarning;
import rootcast.rounds.Task;
import rootcast.warnings.Warning;

/**
 * A warning as it is shown.
 *
 * @param kind     dry-down, medium-dry, over-misting, medium-saturated, medium-cold, air-cold, light-high, air-wet,
 *                 night-mist-on, mist-not-weaned, leached, no-feed, scouting-missed, prevention-missed or no-readings
 * @param batch    null if it is about the house
 * @param quantity only for no-readings
 * @param until    null while it lasts
 * @param state    lasting, acknowledged or ended
 * @param settledBy checks of a round that settle it; empty where only the climate does
 * @param worst    in {@code unit}, like {@code limit}; null where there is no value
 */
record WarningView(
        UUID id,
        String kind,
        String site,
        String house,
        @Nullable String batch,
        @Nullable String quantity,
        String state,
        Instant since,
        Instant raisedAt,
        @Nullable Instant until,
        @Nullable Double worst,
        @Nullable Double limit,
        @Nullable String unit,
        List<String> batches,
        List<String> settledBy,
        String text,
        @Nullable Instant acknowledgedAt,
        @Nullable String acknowledgedBy,
        @Nullable String acknowledgement,
        List<WrittenWarning.Delivery> deliveries) {

    static WarningView of(WrittenWarning written) {
        Warning warning = written.warning();
        return new WarningView(
                written.id(),
                warning.kind().wireName(),
                written.site(),
                warning.house(),
                warning.batch(),
                warning.measured() == null ? null : warning.measured().wireName(),
                warning.until() != null ? "ended" : written.acknowledgedAt() != null ? "acknowledged" : "lasting",
                warning.since(),
                warning.raisedAt(),
                warning.until(),
                warning.worst(),
                warning.limit(),
                warning.unit().isEmpty() ? null : warning.unit(),
                warning.batches(),
                warning.kind().settledBy().stream().map(Task::wireName).toList(),
                WarningText.of(warning),
                written.acknowledgedAt(),
                written.acknowledgedBy(),
                written.acknowledgement(),
                written.deliveries());
    }
}
