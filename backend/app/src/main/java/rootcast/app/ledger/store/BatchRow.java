package rootcast.app.ledger.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "batch")
public class BatchRow {
    @Id
    public String id;

    public String site;
    public String variety;
    public String trayFormat;
    public Instant stuckAt;
}
