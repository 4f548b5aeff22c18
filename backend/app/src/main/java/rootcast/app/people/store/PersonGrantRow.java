package rootcast.app.people.store;

import jakarta.persistence.Embeddable;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import java.io.Serializable;

@Entity
@Table(name = "person_grant")
public class PersonGrantRow {

    @Embeddable
    public record Id(String person, int seq) implements Serializable {}

    @EmbeddedId
    public Id id;

    public String role;
    public String site;
}
