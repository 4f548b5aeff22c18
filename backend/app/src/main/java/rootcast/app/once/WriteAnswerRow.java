package rootcast.app.once;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.time.Instant;

/** The answer that a write gave, under its sender's key. */
@Entity
@Table(name = "write_answer")
class WriteAnswerRow {

    @Embeddable
    record Id(String sender, String onceKey) implements Serializable {}

    @EmbeddedId
    Id id;

    String fingerprint;
    int status;

    @Column(columnDefinition = "text")
    String body;

    long positionNo;
    Instant recordedAt;
}
