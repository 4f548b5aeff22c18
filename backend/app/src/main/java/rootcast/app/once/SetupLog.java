package rootcast.app.once;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.InstantSource;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rootcast.app.people.Caller;

/** Keeps and tells who changed the set-up, as entries keep who recorded them. */
@ApplicationScoped
public class SetupLog {

    private static final int MOST_WHAT = 200;

    @Inject
    EntityManager database;

    @Inject
    Caller caller;

    @Inject
    InstantSource time;

    /**
     * In the transaction of the change.
     *
     * @param what method and path
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public void add(String what) {
        SetupChangeRow row = new SetupChangeRow();
        row.recordedAt = time.instant();
        row.recordedBy = caller.who().name();
        row.what = what.length() > MOST_WHAT ? what.substring(0, MOST_WHAT) : what;
        database.persist(row);
    }

    /**
     * Newest first.
     *
     * @param before only those with a smaller id; all if null
     * @param text   a part of who or of what, in capitals or not; empty for all
     * @param most   how many at most
     */
    @Transactional
    public List<SetupChange> before(@Nullable Long before, String text, int most) {
        return database.createQuery(
                        "from SetupChangeRow where id < :before"
                                + " and (lower(recordedBy) like :text escape '!' or lower(what) like :text escape '!')"
                                + " order by id desc",
                        SetupChangeRow.class)
                .setParameter("before", before == null ? Long.MAX_VALUE : before)
                .setParameter("text", "%" + text.toLowerCase(Locale.ROOT).replaceAll("[!%_]", "!$0") + "%")
                .setMaxResults(most)
                .getResultStream()
                .map(row -> new SetupChange(row.id, row.recordedAt, row.recordedBy, row.what))
                .toList();
    }
}
