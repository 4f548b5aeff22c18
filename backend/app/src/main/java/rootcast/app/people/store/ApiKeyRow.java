package rootcast.app.people.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;
import java.util.UUID;

@Entity
@Table(name = "api_key")
public class ApiKeyRow {
    @Id
    public UUID id;

    public String name;
    public String secretHash;
    public Instant createdAt;
    public String createdBy;
    public Instant lastUsedAt;
    public Instant endedAt;
}
