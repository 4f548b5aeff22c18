package rootcast.app.warnings.store;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;
import java.util.UUID;

@Entity
@Table(name = "warning_delivery")
public class WarningDeliveryRow {

    @Embeddable
    public record Id(UUID warning, String channel) implements Serializable {}

    @EmbeddedId
    public Id id;

    public Instant dueAt;
    public int attempts;
    public String lastError;
    public Instant deliveredAt;
    public String claimedBy;
    public Instant claimedUntil;
}
