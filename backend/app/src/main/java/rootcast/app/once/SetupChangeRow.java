package rootcast.app.once;

import jakarta.persistence.Entity;
import jakarta.persistence.GeneratedValue;
import jakarta.persistence.GenerationType;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

/** Who changed the set-up, when and what. */
@Entity
@Table(name = "setup_change")
class SetupChangeRow {

    @Id
    @GeneratedValue(strategy = GenerationType.IDENTITY)
    Long id;

    Instant recordedAt;
    String recordedBy;
    String what;
}
