package rootcast.app.treatments.rest;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.OffsetDateTime;
import java.util.Arrays;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;
import rootcast.app.site.Code;
import rootcast.app.treatments.RecordTreatment;
import rootcast.app.treatments.TreatmentDetails;
import rootcast.rounds.Treatment;
import rootcast.saying.Fault;

/**
 * A treatment as it is sent.
 *
 * @param batch        left out for the whole house
 * @param purpose      prevention, control, growth-regulation or other; other if left out
 * @param rate         as on the label, in its own words
 * @param reentryHours as on the label
 */
record TreatmentWire(
        @Code String house,
        @Nullable @Size(max = 64) String batch,
        @Nullable String purpose,
        @NotBlank @Size(max = 200) String product,
        @NotBlank @Size(max = 500) String rate,
        @NotBlank @Size(max = 200) String appliedBy,
        @NotNull OffsetDateTime appliedAt,
        @NotNull Double reentryHours,
        @Nullable @Size(max = 200) String target,
        @Nullable @Size(max = 200) String totalUsed,
        @Nullable Double areaM2,
        @Nullable @Size(max = 100) String registrationNumber,
        @Nullable @Size(max = 100) String licenceNumber,
        @Nullable @Size(max = 200) String weather,
        @Nullable @Size(max = 2000) String note) {

    RecordTreatment.Wanted wanted() {
        return new RecordTreatment.Wanted(
                house,
                batch,
                purposeOf(purpose == null ? "other" : purpose),
                product.strip(),
                rate.strip(),
                appliedBy.strip(),
                appliedAt.toInstant(),
                reentryHours,
                new TreatmentDetails(
                        said(target),
                        said(totalUsed),
                        areaM2,
                        said(registrationNumber),
                        said(licenceNumber),
                        said(weather)),
                note);
    }

    private static @Nullable String said(@Nullable String text) {
        return text == null || text.isBlank() ? null : text.strip();
    }

    private static Treatment.Purpose purposeOf(String text) {
        return Arrays.stream(Treatment.Purpose.values())
                .filter(purpose -> wireName(purpose).equals(text))
                .findFirst()
                .orElseThrow(() -> Problem.notAllowed(
                        "purpose",
                        text,
                        Fault.ONE_OF,
                        Arrays.stream(Treatment.Purpose.values())
                                .map(TreatmentWire::wireName)
                                .toList()));
    }

    static String wireName(Treatment.Purpose purpose) {
        return purpose.name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
