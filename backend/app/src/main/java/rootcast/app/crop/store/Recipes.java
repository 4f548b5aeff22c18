package rootcast.app.crop.store;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import rootcast.app.crop.RecipeText;
import rootcast.app.once.FactHead;

/** Recipes as stored, in versions. */
@ApplicationScoped
@Transactional
public class Recipes {

    @Inject
    Rows rows;

    @Inject
    ObjectMapper json;

    @Inject
    FactHead head;

    /** A version never changes, so reading it once is enough. */
    private final Map<CropRecipeRow.Id, Stored> read = new ConcurrentHashMap<>();

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<CropRecipeRow, CropRecipeRow.Id> {}

    /** One version. */
    public record Stored(String crop, int version, RecipeText text, Instant recordedAt) {}

    public Optional<Stored> newest(String crop) {
        return versions(crop).stream().findFirst();
    }

    /** Newest first. */
    public List<Stored> versions(String crop) {
        return rows.list("id.crop = ?1 order by id.versionNo desc", crop).stream()
                .map(this::stored)
                .toList();
    }

    /** The newest of every crop that has one. */
    public Map<String, Stored> newest() {
        Map<String, Stored> newest = new HashMap<>();
        rows.list("order by id.versionNo").forEach(row -> newest.put(row.id.crop(), stored(row)));
        return newest;
    }

    public Stored add(String crop, RecipeText text, Instant recordedAt) {
        CropRecipeRow row = new CropRecipeRow();
        row.id = new CropRecipeRow.Id(crop, newest(crop).map(Stored::version).orElse(0) + 1);
        row.recordedAt = recordedAt;
        try {
            row.body = json.writeValueAsString(text);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
        rows.persist(row);
        head.nextForCare();
        return new Stored(crop, row.id.versionNo(), text, recordedAt);
    }

    private Stored stored(CropRecipeRow row) {
        return read.computeIfAbsent(row.id, id -> {
            try {
                return new Stored(
                        id.crop(), id.versionNo(), json.readValue(row.body, RecipeText.class), row.recordedAt);
            } catch (JsonProcessingException broken) {
                throw new IllegalStateException("recipe of " + id.crop() + ", version " + id.versionNo(), broken);
            }
        });
    }
}
