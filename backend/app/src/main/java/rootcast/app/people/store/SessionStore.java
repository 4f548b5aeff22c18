package rootcast.app.people.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rootcast.app.people.Session;

/** Sessions as stored. */
@ApplicationScoped
@Transactional
public class SessionStore {

    @Inject
    Rows rows;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<PersonSessionRow, UUID> {}

    public void add(Session session) {
        PersonSessionRow row = new PersonSessionRow();
        row.id = session.id();
        row.secretHash = session.secretHash();
        row.person = session.person();
        row.begunAt = session.begunAt();
        row.lastSeenAt = session.lastSeenAt();
        row.device = session.device();
        rows.persist(row);
    }

    public Optional<Session> ofSecret(String hash) {
        return rows.find("secretHash", hash).firstResultOptional().map(SessionStore::session);
    }

    /** The one used last first. */
    public List<Session> of(String person) {
        return rows.list("person = ?1 order by lastSeenAt desc, id", person).stream()
                .map(SessionStore::session)
                .toList();
    }

    public void seen(UUID id, Instant at) {
        rows.update("lastSeenAt = ?1 where id = ?2 and lastSeenAt < ?1", at, id);
    }

    public boolean end(UUID id, String person) {
        return rows.delete("id = ?1 and person = ?2", id, person) > 0;
    }

    public void endAll(String person) {
        rows.delete("person", person);
    }

    public void endAllBut(String person, String secretHash) {
        rows.delete("person = ?1 and secretHash <> ?2", person, secretHash);
    }

    public void purge(Instant lastSeenBefore, Instant begunBefore) {
        rows.delete("lastSeenAt < ?1 or begunAt < ?2", lastSeenBefore, begunBefore);
    }

    private static Session session(PersonSessionRow row) {
        return new Session(row.id, row.secretHash, row.person, row.begunAt, row.lastSeenAt, row.device);
    }
}
