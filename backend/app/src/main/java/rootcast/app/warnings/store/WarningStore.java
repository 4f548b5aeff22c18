package rootcast.app.warnings.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.app.warnings.WrittenWarning;
import rootcast.warnings.Warning;

/** The log of warnings and what was sent of them, as stored. */
@ApplicationScoped
@Transactional
public class WarningStore {

    @Inject
    Rows rows;

    @Inject
    Deliveries deliveries;

    @Inject
    WarningMapper mapper;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<WarningRow, UUID> {}

    @ApplicationScoped
    static class Deliveries implements PanacheRepositoryBase<WarningDeliveryRow, WarningDeliveryRow.Id> {}

    /** Of a site, those that stood at some moment of the span, newest first. */
    public List<WrittenWarning> of(String site, Instant fromInclusive, Instant untilExclusive) {
        return written(rows.list(
                "site = ?1 and sinceAt < ?3 and (untilAt is null or untilAt >= ?2) order by sinceAt desc, id",
                site,
                fromInclusive,
                untilExclusive));
    }

    public Optional<WrittenWarning> one(UUID id) {
        return rows.findByIdOptional(id).map(row -> written(List.of(row)).get(0));
    }

    public void add(UUID id, String site, Warning warning, Instant firstSeenAt) {
        WarningRow row = new WarningRow();
        row.id = id;
        row.site = site;
        row.firstSeenAt = firstSeenAt;
        mapper.fill(row, warning);
        rows.persist(row);
        rows.flush();
    }

    public void change(UUID id, Warning warning) {
        mapper.fill(rows.findById(id), warning);
    }

    public void acknowledge(UUID id, Instant at, String by, @Nullable String text) {
        WarningRow row = rows.findById(id);
        row.acknowledgedAt = at;
        row.acknowledgedBy = by;
        row.acknowledgement = text;
    }

    private List<WrittenWarning> written(List<WarningRow> found) {
        if (found.isEmpty()) {
            return List.of();
        }
        Map<UUID, List<WarningDeliveryRow>> sent =
                deliveries
                        .list(
                                "id.warning in ?1 order by id.channel",
                                found.stream().map(row -> row.id).toList())
                        .stream()
                        .collect(Collectors.groupingBy(row -> row.id.warning()));
        return found.stream()
                .map(row -> mapper.written(row, sent.getOrDefault(row.id, List.of())))
                .toList();
    }
}
