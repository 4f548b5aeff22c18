package rootcast.app.climate.store;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** One reading, in the unit of its quantity and as it came. */
@Entity
@Table(name = "reading")
public class ReadingRow {

    @Embeddable
    public record Id(String house, String quantity, String sensor, Instant measuredAt) implements Serializable {}

    @EmbeddedId
    public Id id;

    public double readingValue;
    public Double sentValue;
    public String sentUnit;
    public boolean isLate;
    public Instant recordedAt;
    public long positionNo;
}
