package rootcast.app.availability.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

@Entity
@Table(name = "customer_order")
public class CustomerOrderRow {
    @Id
    public UUID id;

    public long orderNo;
    public String customer;
    public String note;
    public double confidence;
    public Instant recordedAt;
    public String recordedBy;
    public long positionNo;
    public Instant releasedAt;
    public String releasedBy;
    public Long releasedPosition;
}
