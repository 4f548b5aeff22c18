package rootcast.app.crop.store;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** One version of a crop's recipe; never changed. */
@Entity
@Table(name = "crop_recipe")
public class CropRecipeRow {

    @Embeddable
    public record Id(String crop, int versionNo) implements Serializable {}

    @EmbeddedId
    public Id id;

    @Column(columnDefinition = "text")
    public String body;

    public Instant recordedAt;
}
