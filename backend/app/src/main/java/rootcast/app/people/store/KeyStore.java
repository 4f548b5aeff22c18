package rootcast.app.people.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rootcast.app.people.ApiKey;
import rootcast.app.people.Grant;
import rootcast.app.people.Role;

/** Keys of devices and partners as stored. */
@ApplicationScoped
@Transactional
public class KeyStore {

    @Inject
    Rows rows;

    @Inject
    Grants grants;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<ApiKeyRow, UUID> {}

    @ApplicationScoped
    static class Grants implements PanacheRepositoryBase<ApiKeyGrantRow, ApiKeyGrantRow.Id> {}

    public void add(ApiKey key) {
        ApiKeyRow row = new ApiKeyRow();
        row.id = key.id();
        row.name = key.name();
        row.secretHash = key.secretHash();
        row.createdAt = key.createdAt();
        row.createdBy = key.createdBy();
        rows.persist(row);
        rows.flush();
        int seq = 0;
        for (Grant grant : key.grants()) {
            ApiKeyGrantRow granted = new ApiKeyGrantRow();
            granted.id = new ApiKeyGrantRow.Id(key.id(), seq++);
            granted.role = grant.role().name();
            granted.site = grant.site();
            grants.persist(granted);
        }
    }

    public Optional<ApiKey> ofSecret(String hash) {
        return rows.find("secretHash", hash).firstResultOptional().map(this::key);
    }

    public boolean isInUse(String name) {
        return rows.count("name = ?1 and endedAt is null", name) > 0;
    }

    /** Those in force first, by name. */
    public List<ApiKey> all() {
        return rows.list("order by name, createdAt").stream().map(this::key).toList();
    }

    public void used(UUID id, Instant at) {
        rows.update("lastUsedAt = ?1 where id = ?2 and (lastUsedAt is null or lastUsedAt < ?1)", at, id);
    }

    /** Gives the key as it was; empty if there is none in force. */
    public Optional<ApiKey> end(UUID id, Instant at) {
        Optional<ApiKeyRow> row = rows.findByIdOptional(id).filter(found -> found.endedAt == null);
        row.ifPresent(found -> found.endedAt = at);
        return row.map(this::key);
    }

    private ApiKey key(ApiKeyRow row) {
        return new ApiKey(
                row.id,
                row.name,
                row.secretHash,
                row.createdAt,
                row.createdBy,
                row.lastUsedAt,
                row.endedAt,
                grants.list("id.apiKey = ?1 order by id.seq", row.id).stream()
                        .map(each -> new Grant(Role.valueOf(each.role), each.site))
                        .toList());
    }
}
