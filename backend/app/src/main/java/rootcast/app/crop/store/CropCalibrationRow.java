package rootcast.app.crop.store;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** What the record says of a version's ranges at one lead; never changed, the next seq replaces all leads. */
@Entity
@Table(name = "crop_calibration")
public class CropCalibrationRow {

    @Embeddable
    public record Id(String crop, int versionNo, int seq, double leadDays) implements Serializable {}

    @EmbeddedId
    public Id id;

    public double early;
    public double middle;
    public double late;
    public double batches;
    public long newestEntry;
    public Instant knownAt;
}
