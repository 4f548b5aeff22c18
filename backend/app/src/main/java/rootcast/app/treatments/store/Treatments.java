package rootcast.app.treatments.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rootcast.app.once.FactHead;
import rootcast.app.treatments.AppliedTreatment;

/** Treatments as stored. */
@ApplicationScoped
@Transactional
public class Treatments {

    @Inject
    Rows rows;

    @Inject
    TreatmentMapper mapper;

    @Inject
    FactHead head;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<TreatmentRow, UUID> {}

    public void add(AppliedTreatment treatment) {
        rows.persist(mapper.row(treatment));
        head.nextForCare();
    }

    public Optional<AppliedTreatment> one(UUID id) {
        return rows.findByIdOptional(id).map(mapper::treatment);
    }

    /** Reversed ones too, newest first. */
    public List<AppliedTreatment> of(String site, Instant fromInclusive, Instant untilExclusive) {
        return rows
                .list(
                        "site = ?1 and appliedAt >= ?2 and appliedAt < ?3 order by appliedAt desc, id",
                        site,
                        fromInclusive,
                        untilExclusive)
                .stream()
                .map(mapper::treatment)
                .toList();
    }

    public void reverse(UUID id, Instant at, String by, String reason) {
        TreatmentRow row = rows.findById(id);
        row.reversedAt = at;
        row.reversedBy = by;
        row.reversalReason = reason;
        head.nextForCare();
    }
}
