package rootcast.app.people.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.time.Instant;

@Entity
@Table(name = "sign_in_failure")
public class SignInFailureRow {
    @Id
    public String subject;

    public int failures;
    public Instant firstFailedAt;
    public Instant lockedUntil;
}
