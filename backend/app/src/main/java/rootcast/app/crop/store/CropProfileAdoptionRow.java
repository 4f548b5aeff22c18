package rootcast.app.crop.store;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** From when a version of a profile is in force; never changed, the next one ends it. */
@Entity
@Table(name = "crop_profile_adoption")
public class CropProfileAdoptionRow {

    @Embeddable
    public record Id(String crop, int seq) implements Serializable {}

    @EmbeddedId
    public Id id;

    public int versionNo;
    public boolean pinned;
    public Instant adoptedAt;
}
