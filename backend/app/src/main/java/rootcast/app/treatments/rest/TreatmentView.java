package rootcast.app.treatments.rest;

import java.time.Instant;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.treatments.AppliedTreatment;
import rootcast.app.treatments.RecordTreatment;
import rootcast.rounds.Treatment;

/**
 * A treatment as it is shown.
 *
 * @param reentryAt when the house may be entered again, as far as this treatment goes
 * @param closed    whether it keeps people out of the house now
 * @param cautions  sentences to show beside it
 */
record TreatmentView(
        UUID id,
        String site,
        String house,
        @Nullable String batch,
        String purpose,
        String product,
        String rate,
        String appliedBy,
        Instant appliedAt,
        double reentryHours,
        Instant reentryAt,
        boolean closed,
        @Nullable String target,
        @Nullable String totalUsed,
        @Nullable Double areaM2,
        @Nullable String registrationNumber,
        @Nullable String licenceNumber,
        @Nullable String weather,
        @Nullable String note,
        Instant recordedAt,
        String recordedBy,
        @Nullable Instant reversedAt,
        @Nullable String reversedBy,
        @Nullable String reversalReason,
        List<String> cautions) {

    static TreatmentView of(AppliedTreatment applied, Instant now) {
        Treatment treatment = applied.treatment();
        return new TreatmentView(
                treatment.id(),
                applied.site(),
                treatment.house(),
                treatment.batch(),
                TreatmentWire.wireName(treatment.purpose()),
                treatment.product(),
                applied.rate(),
                applied.appliedBy(),
                treatment.appliedAt(),
                treatment.reentry().toMillis() / 3_600_000.0,
                treatment.reentryAt(),
                applied.isInForce() && !now.isBefore(treatment.appliedAt()) && now.isBefore(treatment.reentryAt()),
                applied.details().target(),
                applied.details().totalUsed(),
                applied.details().areaM2(),
                applied.details().registrationNumber(),
                applied.details().licenceNumber(),
                applied.details().weather(),
                applied.note(),
                applied.recordedAt(),
                applied.recordedBy(),
                applied.reversedAt(),
                applied.reversedBy(),
                applied.reversalReason(),
                RecordTreatment.CAUTIONS);
    }
}
