package rootcast.app.treatments;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;
import rootcast.app.problem.RefusalTable;
import rootcast.app.problem.Thing;
import rootcast.app.site.store.Places;
import rootcast.app.treatments.store.Treatments;
import rootcast.ledger.Batch;
import rootcast.rounds.Treatment;
import rootcast.saying.Fault;
import rootcast.site.House;

/** Writes down what was applied, and takes it back if that was a mistake. */
@ApplicationScoped
public class RecordTreatment {

    /** Longer than any label asks for; a slip of a digit closes no house for a year. */
    public static final Duration LONGEST_REENTRY = Duration.ofDays(30);

    private static final double MOST_REENTRY_HOURS = LONGEST_REENTRY.toHours();

    private static final double MOST_AREA_M2 = 1_000_000;

    /** Shown beside every treatment. */
    public static final List<String> CAUTIONS = List.of(
            "The label and the law of your place decide what may be applied, how much, by whom and when people may go in.",
            "Wear what the label asks for. Keep people out until the re-entry interval has passed and the house is aired.",
            "Only people with the licence that your law asks for may apply it, and the record must be kept as long as it says.");

    @Inject
    Rights rights;

    @Inject
    Places places;

    @Inject
    PanacheLedger ledger;

    @Inject
    Treatments treatments;

    /** What is wanted to be recorded. */
    public record Wanted(
            String house,
            @Nullable String batch,
            Treatment.Purpose purpose,
            String product,
            String rate,
            String appliedBy,
            Instant appliedAt,
            double reentryHours,
            TreatmentDetails details,
            @Nullable String note) {}

    /** To be called inside {@link rootcast.app.once.Once}. */
    public AppliedTreatment record(Wanted wanted, String recordedBy, Instant now) {
        House house = places.house(wanted.house()).orElseThrow(() -> Problem.unknownCode("house", wanted.house()));
        rights.at(house.site(), Right.RECORD);
        if (wanted.batch() != null) {
            standsOnSite(wanted.batch(), house);
        }
        if (wanted.appliedAt().isAfter(now)) {
            throw RefusalTable.inTheFuture(wanted.appliedAt(), now);
        }
        if (!(wanted.reentryHours() >= 0 && wanted.reentryHours() <= MOST_REENTRY_HOURS)) {
            throw Problem.notAllowed("reentryHours", wanted.reentryHours(), Fault.BETWEEN, 0, MOST_REENTRY_HOURS);
        }
        Double areaM2 = wanted.details().areaM2();
        if (areaM2 != null && !(areaM2 > 0 && areaM2 <= MOST_AREA_M2)) {
            throw Problem.notAllowed("areaM2", areaM2, Fault.OVER_AND_AT_MOST, 0, MOST_AREA_M2);
        }
        Treatment treatment = new Treatment(
                UUID.randomUUID(),
                house.code(),
                wanted.batch(),
                wanted.purpose(),
                wanted.product(),
                wanted.appliedAt().truncatedTo(ChronoUnit.MICROS),
                Duration.ofMillis(Math.round(wanted.reentryHours() * 3_600_000)));
        AppliedTreatment applied = new AppliedTreatment(
                treatment,
                house.site(),
                wanted.rate(),
                wanted.appliedBy(),
                wanted.details(),
                wanted.note(),
                now,
                recordedBy,
                null,
                null,
                null);
        treatments.add(applied);
        return applied;
    }

    /** To be called inside {@link rootcast.app.once.Once}. */
    public AppliedTreatment reverse(UUID id, String reason, String by, Instant now) {
        AppliedTreatment before =
                treatments.one(id).orElseThrow(() -> Problem.notFound(Thing.TREATMENT, id.toString()));
        rights.at(before.site(), Right.RECORD);
        if (!before.isInForce()) {
            throw new Problem(
                            ProblemType.TREATMENT_ALREADY_REVERSED,
                            "The treatment was reversed at %s.".formatted(before.reversedAt()))
                    .with("asked", id)
                    .with("reversedAt", before.reversedAt());
        }
        treatments.reverse(id, now, by, reason);
        return treatments.one(id).orElseThrow();
    }

    private void standsOnSite(String id, House house) {
        Batch batch = ledger.batch(id).orElseThrow(() -> Problem.unknownCode("batch", id));
        if (!batch.site().equals(house.site())) {
            throw Problem.notAllowed("batch", id, Fault.OTHER_SITE, batch.site(), house.site());
        }
    }
}
