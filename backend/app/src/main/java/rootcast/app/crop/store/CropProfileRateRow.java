package rootcast.app.crop.store;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;

/** How a variety or a site differs from the crop, in one version of its profile. */
@Entity
@Table(name = "crop_profile_rate")
public class CropProfileRateRow {

    @Embeddable
    public record Id(String crop, int versionNo, String kind, String code) implements Serializable {}

    @EmbeddedId
    public Id id;

    public double factor;
}
