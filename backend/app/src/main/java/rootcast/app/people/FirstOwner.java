package rootcast.app.people;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.StartupEvent;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.InstantSource;
import java.util.List;
import org.jboss.logging.Logger;
import rootcast.app.people.store.FirstOwnerSecrets;
import rootcast.app.people.store.Persons;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;
import rootcast.app.wiring.Invented;

/**
 * The first start. There is no default password: the log shows a secret, and whoever can read the log makes the first
 * owner with it. It is dead after that.
 */
@ApplicationScoped
public class FirstOwner {

    private static final Logger LOG = Logger.getLogger(FirstOwner.class);
    private static final int SECRET_BITS = 128;

    /** Secrets of earlier starts stay good for so long: another node may have printed them. */
    private static final Duration EARLIER = Duration.ofDays(1);

    @Inject
    Persons persons;

    @Inject
    FirstOwnerSecrets secrets;

    @Inject
    Passwords passwords;

    @Inject
    Audit audit;

    @Inject
    Instance<Invented> invented;

    @Inject
    InstantSource time;

    void start(@Observes @Priority(200) StartupEvent event) {
        if (isNeeded()) {
            LOG.infof(
                    "nobody can sign in yet. Open the page and make the owner's account with this secret: %s",
                    newSecret());
        }
    }

    /** Whether there is nobody yet who could sign in. The demo has its doors. */
    public boolean isNeeded() {
        return invented.isUnsatisfied() && persons.isEmpty();
    }

    String newSecret() {
        String secret = Secrets.random(SECRET_BITS);
        QuarkusTransaction.requiringNew().run(() -> {
            secrets.purge(time.instant().minus(EARLIER));
            secrets.add(Secrets.hash(secret), time.instant());
        });
        return secret;
    }

    /** Makes the owner's account; one caller succeeds, however many hold the secret. */
    public Person make(String secret, String name, String displayName, String password, String address) {
        Staff.nameIsAllowed(name);
        passwords.check("password", password, name);
        String hash = passwords.hash(password);
        Person owner = new Person(
                name,
                displayName,
                hash,
                Person.Origin.PASSWORD,
                true,
                time.instant(),
                List.of(new Grant(Role.OWNER, null)));
        boolean made = QuarkusTransaction.requiringNew().call(() -> {
            persons.hold(); // secrets of two nodes at once: the second finds an owner
            if (!secrets.use(Secrets.hash(secret.strip())) || !persons.isEmpty()) {
                return false;
            }
            secrets.purgeAll();
            persons.save(owner);
            audit.changed(name, "first-owner", "made with the secret of the first start", address);
            return true;
        });
        if (!made) {
            audit.refused(name, "first-owner-refused", "the secret is not the one of this first start", address);
            throw new Problem(
                    ProblemType.WRONG_SECRET,
                    "The secret is not the one that the log shows, or there is an owner already.");
        }
        return owner;
    }
}
