package rootcast.app.climate.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** What a rule says of a reading, or of a sensor's hour. */
@Entity
@Table(name = "reading_flag")
public class ReadingFlagRow {

    @Id
    public UUID id;

    public String house;
    public String quantity;
    public String sensor;
    public String kind;
    public Instant flaggedAt;
    public double shownValue;
    public Double expected;
    public double limitValue;
    public boolean leftOut;
}
