package rootcast.app.people.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

@Entity
@Table(name = "person_session")
public class PersonSessionRow {
    @Id
    public UUID id;

    public String secretHash;
    public String person;
    public Instant begunAt;
    public Instant lastSeenAt;
    public String device;
}
