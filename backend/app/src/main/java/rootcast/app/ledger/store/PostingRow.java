package rootcast.app.ledger.store;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** Plants that one entry puts into one account. */
@Entity
@Table(name = "posting")
public class PostingRow {

    @Embeddable
    public record Id(long positionNo, int seq) implements Serializable {}

    @EmbeddedId
    public Id id;

    public String batch;
    public String account;
    public String house;
    public String cause;
    public long plants;
    public Instant effectiveAt;
}
