package rootcast.app.ledger.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

/** One ledger entry; which of the optional columns are filled depends on its kind. */
@Entity
@Table(name = "ledger_entry")
public class EntryRow {
    @Id
    public long positionNo;

    public UUID id;
    public String batch;
    public String kind;
    public Instant happenedAt;
    public Instant recordedAt;
    public String recordedBy;
    public String house;
    public Integer trays;
    public Integer plants;
    public String cause;
    public Integer sampledTrays;
    public Integer sampledCells;
    public Integer blanks;
    public String stage;
    public Integer lookedCells;
    public Integer reachedCells;
    public UUID reverses;
    public String reason;
    public UUID orderId;
    public Integer orderLine;
    public String note;
}
