package rootcast.app.people.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "first_owner_secret")
public class FirstOwnerSecretRow {
    @Id
    public String secretHash;

    public Instant madeAt;
}
