package rootcast.app.climate.store;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** Sum of one hour's good readings. */
@Entity
@Table(name = "reading_hour")
public class ReadingHourRow {

    @Embeddable
    public record Id(String house, String quantity, Instant hourStart) implements Serializable {}

    @EmbeddedId
    public Id id;

    public long totalMicro;
    public int readings;
    public int leftOut;
    public boolean settled;
    public long positionNo;
}
