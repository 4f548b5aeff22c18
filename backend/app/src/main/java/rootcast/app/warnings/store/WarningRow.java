package rootcast.app.warnings.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

@Entity
@Table(name = "warning_log")
public class WarningRow {
    @Id
    public UUID id;

    public String kind;
    public String site;
    public String house;
    public String batch;
    public String quantity;
    public Instant sinceAt;
    public Instant raisedAt;
    public Instant untilAt;
    public Double worst;
    public Double limitValue;
    public String unit;

    @Column(columnDefinition = "text")
    public String batches;

    public Instant firstSeenAt;
    public Instant acknowledgedAt;
    public String acknowledgedBy;
    public String acknowledgement;
}
