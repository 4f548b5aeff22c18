package rootcast.app.crop.store;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;

/** One stage of a version of a crop's profile. */
@Entity
@Table(name = "crop_profile_stage")
public class CropProfileStageRow {

    @Embeddable
    public record Id(String crop, int versionNo, String stage) implements Serializable {}

    @EmbeddedId
    public Id id;

    public double daysAtReference;
    public String form;

    @Column(name = "min_c")
    public double minC;

    @Column(name = "optimum_c")
    public double optimumC;

    @Column(name = "max_c")
    public double maxC;

    @Column(name = "reference_c")
    public double referenceC;

    public double survivalMean;
    public double survivalWeight;
    public String source;
}
