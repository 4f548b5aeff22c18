package rootcast.app.once;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

/** The answer that a write gave, under its sender's key. */
@Entity
@Table(name = "written_once")
class WrittenOnceRow {

    @Id
    String onceKey;

    String fingerprint;
    int status;

    @Column(columnDefinition = "text")
    String body;

    Instant recordedAt;
}
