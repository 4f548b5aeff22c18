package rootcast.app.treatments.store;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

@Entity
@Table(name = "treatment")
public class TreatmentRow {
    @Id
    public UUID id;

    public String site;
    public String house;
    public String batch;
    public String purpose;
    public String product;
    public String rate;
    public String appliedBy;
    public Instant appliedAt;
    public double reentryHours;
    public String target;
    public String totalUsed;

    @Column(name = "area_m2")
    public Double areaM2;

    public String registrationNumber;
    public String licenceNumber;
    public String weather;
    public String note;
    public Instant recordedAt;
    public String recordedBy;
    public Instant reversedAt;
    public String reversedBy;
    public String reversalReason;
}
