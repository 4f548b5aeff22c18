package rootcast.app.people.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import rootcast.app.people.AuditLine;

/** The audit list as stored. */
@ApplicationScoped
@Transactional
public class AuditLines {

    @Inject
    Rows rows;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<AuditLineRow, Long> {}

    public void add(AuditLine line) {
        AuditLineRow row = new AuditLineRow();
        row.happenedAt = line.at();
        row.who = line.who();
        row.what = line.what();
        row.detail = line.detail();
        row.cameFrom = line.from();
        rows.persist(row);
    }

    /** Newest first. */
    public List<AuditLine> before(Instant exclusive, int most) {
        return rows.find("happenedAt < ?1 order by happenedAt desc, id desc", exclusive).page(0, most).list().stream()
                .map(row -> new AuditLine(row.happenedAt, row.who, row.what, row.detail, row.cameFrom))
                .toList();
    }

    public void purge(Instant before) {
        rows.delete("happenedAt < ?1", before);
    }
}
