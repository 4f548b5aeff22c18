package rootcast.app.climate.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** A reading that is kept outside of the series. */
@Entity
@Table(name = "reading_aside")
public class ReadingAsideRow {

    @Id
    public UUID id;

    public String house;
    public String quantity;
    public String sensor;
    public String kind;
    public Instant measuredAt;
    public double readingValue;
    public Double sentValue;
    public String sentUnit;
    public Double expected;
    public Instant recordedAt;
    public long positionNo;
}
