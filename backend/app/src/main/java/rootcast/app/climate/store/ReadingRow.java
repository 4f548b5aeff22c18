package rootcast.app.climate.store;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** One reading as it came, in °C. */
@Entity
@Table(name = "reading")
public class ReadingRow {

    @Embeddable
    public record Id(String house, String quantity, Instant measuredAt) implements Serializable {}

    @EmbeddedId
    public Id id;

    public double readingValue;
    public Instant recordedAt;
    public long positionNo;
}
