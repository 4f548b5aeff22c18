package rootcast.app.rounds.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import rootcast.app.once.FactHead;
import rootcast.app.rounds.RecordedCare;

/** Closed round items as stored. Those taken back are kept and not given out. */
@ApplicationScoped
@Transactional
public class RoundCares {

    @Inject
    Rows rows;

    @Inject
    RoundCareMapper mapper;

    @Inject
    FactHead head;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<RoundCareRow, UUID> {}

    public void add(RecordedCare care) {
        rows.persist(mapper.row(care));
        head.nextForCare();
    }

    /** In the order in which it happened. */
    public List<RecordedCare> of(String site, Instant sinceInclusive) {
        return rows
                .list(
                        "site = ?1 and happenedAt >= ?2 and takenBackAt is null order by happenedAt, id",
                        site,
                        sinceInclusive)
                .stream()
                .map(mapper::care)
                .toList();
    }

    /** By item; those that are not closed are left out. */
    public Map<String, RecordedCare> ofItems(Collection<String> items) {
        return items.isEmpty()
                ? Map.of()
                : rows.list("item in ?1 and takenBackAt is null", items).stream()
                        .collect(Collectors.toMap(row -> row.item, mapper::care, (first, second) -> first));
    }

    public Optional<RecordedCare> ofItem(String item) {
        return rows.find("item = ?1 and takenBackAt is null", item)
                .firstResultOptional()
                .map(mapper::care);
    }

    public void takeBack(UUID id, Instant at, String by, String reason) {
        RoundCareRow row = rows.findById(id);
        row.takenBackAt = at;
        row.takenBackBy = by;
        row.takenBackReason = reason;
        head.nextForCare();
    }
}
