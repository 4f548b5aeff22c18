package rootcast.app.crop.store;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** One version of a crop's profile; never changed. */
@Entity
@Table(name = "crop_profile")
public class CropProfileRow {

    @Embeddable
    public record Id(String crop, int versionNo) implements Serializable {}

    @EmbeddedId
    public Id id;

    public double rateSpread;
    public int holdDays;
    public double cellSpread;
    public double roundsDays;
    public double stageShare;
    public double cellsDiffer;
    public double daysDoubt;
    public double enteredShare;
    public double calledShare;
    public String note;
    public String origin;

    @Column(columnDefinition = "text")
    public String evidence;

    public Instant recordedAt;
}
