package rootcast.app.people.store;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;
import java.util.UUID;

@Entity
@Table(name = "api_key_grant")
public class ApiKeyGrantRow {

    @Embeddable
    public record Id(UUID apiKey, int seq) implements Serializable {}

    @EmbeddedId
    public Id id;

    public String role;
    public String site;
}
