package rootcast.app.people.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "person")
public class PersonRow {
    @Id
    public String nameKey;

    public String name;
    public String displayName;
    public String passwordHash;
    public String origin;
    public boolean active;
    public Instant createdAt;
}
