package rootcast.app.climate.store;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.UUID;

/** A person's word on a flag; the one with the highest position counts. */
@Entity
@Table(name = "flag_override")
public class FlagOverrideRow {

    @Embeddable
    public record Id(long positionNo, UUID flagId) implements Serializable {}

    @EmbeddedId
    public Id id;

    public String house;
    public String quantity;
    public String sensor;
    public String kind;
    public Instant flaggedAt;
    public boolean overridden;
    public String reason;
    public Instant recordedAt;
}
