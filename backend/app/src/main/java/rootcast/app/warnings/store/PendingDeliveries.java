package rootcast.app.warnings.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rootcast.app.warnings.WrittenWarning;

/** What is to be sent outside, and by which node: a claim runs by the database's clock, which all nodes share. */
@ApplicationScoped
@Transactional
public class PendingDeliveries {

    private static final int LOOKED_AT = 20;
    private static final int LONGEST_ERROR = 500;

    @Inject
    Rows rows;

    @Inject
    WarningStore warnings;

    @Inject
    EntityManager database;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<WarningDeliveryRow, WarningDeliveryRow.Id> {}

    /** A warning that this node has claimed to send through a channel. */
    public record Pending(WrittenWarning warning, String channel, int attempts) {}

    public void add(UUID warning, String channel, Instant dueAt) {
        WarningDeliveryRow row = new WarningDeliveryRow();
        row.id = new WarningDeliveryRow.Id(warning, channel);
        row.dueAt = dueAt;
        rows.persist(row);
    }

    /** Claims the delivery that has been due longest, if there is one that nobody else has claimed. */
    public Optional<Pending> claim(Collection<String> channels, Instant now, String node, Duration howLong) {
        for (WarningDeliveryRow.Id id : due(channels, now)) {
            if (isClaimed(id, node, howLong)) {
                WrittenWarning warning = warnings.one(id.warning()).orElseThrow();
                return Optional.of(new Pending(warning, id.channel(), rows.findById(id).attempts));
            }
        }
        return Optional.empty();
    }

    @SuppressWarnings("unchecked") // a native query of several columns gives arrays
    private List<WarningDeliveryRow.Id> due(Collection<String> channels, Instant now) {
        List<Object[]> due = database.createNativeQuery("select cast(warning as varchar), channel from warning_delivery"
                        + " where delivered_at is null and due_at <= ?1 and channel in (?2)"
                        + " and (claimed_until is null or claimed_until < current_timestamp)"
                        + " order by due_at, warning, channel fetch first " + LOOKED_AT + " rows only")
                .setParameter(1, now.atOffset(ZoneOffset.UTC))
                .setParameter(2, channels)
                .getResultList();
        return due.stream()
                .map(row -> new WarningDeliveryRow.Id(UUID.fromString((String) row[0]), (String) row[1]))
                .toList();
    }

    /** Of two nodes that try it at a time the second waits for the first, looks again, and changes no row. */
    private boolean isClaimed(WarningDeliveryRow.Id id, String node, Duration howLong) {
        return database.createNativeQuery("update warning_delivery set claimed_by = ?1,"
                                + " claimed_until = current_timestamp + cast(?2 as integer) * interval '1' second"
                                + " where warning = ?3 and channel = ?4 and delivered_at is null"
                                + " and (claimed_until is null or claimed_until < current_timestamp)")
                        .setParameter(1, node)
                        .setParameter(2, Math.toIntExact(howLong.toSeconds()))
                        .setParameter(3, id.warning())
                        .setParameter(4, id.channel())
                        .executeUpdate()
                == 1;
    }

    public void sent(Pending one, Instant at) {
        WarningDeliveryRow row = row(one);
        row.attempts++;
        row.lastError = null;
        row.deliveredAt = at;
    }

    /** Gives the claim back: whoever comes first tries it again. */
    public void failed(Pending one, String error, Instant tryAgainAt) {
        WarningDeliveryRow row = row(one);
        row.attempts++;
        row.lastError = error.length() > LONGEST_ERROR ? error.substring(0, LONGEST_ERROR) : error;
        row.dueAt = tryAgainAt;
        row.claimedBy = null;
        row.claimedUntil = null;
    }

    private WarningDeliveryRow row(Pending one) {
        return rows.findById(new WarningDeliveryRow.Id(one.warning().id(), one.channel()));
    }
}
