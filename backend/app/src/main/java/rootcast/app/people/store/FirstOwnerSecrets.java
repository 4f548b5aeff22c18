package rootcast.app.people.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;

/** Hashes of the one-time secrets of the first start. */
@ApplicationScoped
@Transactional
public class FirstOwnerSecrets {

    @Inject
    Rows rows;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<FirstOwnerSecretRow, String> {}

    public void add(String hash, Instant at) {
        FirstOwnerSecretRow row = new FirstOwnerSecretRow();
        row.secretHash = hash;
        row.madeAt = at;
        rows.persist(row);
    }

    /** True for one caller only, however many ask at once. */
    public boolean use(String hash) {
        return rows.delete("secretHash", hash) > 0;
    }

    public void purge(Instant madeBefore) {
        rows.delete("madeAt < ?1", madeBefore);
    }

    public void purgeAll() {
        rows.deleteAll();
    }
}
