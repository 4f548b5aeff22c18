package rootcast.app.people;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.InstantSource;
import java.util.List;
import java.util.UUID;
import rootcast.app.people.store.KeyStore;
import rootcast.app.people.store.Persons;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;

/** Keys of devices and partners: made, listed, ended. */
@ApplicationScoped
public class Keys {

    private static final int KEY_BITS = 256;

    @Inject
    KeyStore keys;

    @Inject
    Persons persons;

    @Inject
    GrantRules grantRules;

    @Inject
    Credentials credentials;

    @Inject
    Audit audit;

    @Inject
    InstantSource time;

    /** @param key shown this once; only its hash is kept */
    public record Made(UUID id, String key) {}

    public Made make(String name, List<Grant> grants, Staff.By by) {
        Staff.nameIsAllowed(name);
        grantRules.checkForKeys(grants);
        String secret = Secrets.random(KEY_BITS);
        ApiKey key =
                new ApiKey(UUID.randomUUID(), name, Secrets.hash(secret), time.instant(), by.who(), null, null, grants);
        QuarkusTransaction.requiringNew().run(() -> {
            persons.hold(); // two of one name at once: the second finds the first
            if (keys.isInUse(name)) {
                throw Problem.nameTaken(Thing.KEY, name);
            }
            keys.add(key);
            audit.changed(by.who(), "key-made", name + ": " + Staff.text(grants), by.address());
        });
        return new Made(key.id(), secret);
    }

    public List<ApiKey> all() {
        return keys.all();
    }

    public void end(UUID id, Staff.By by) {
        QuarkusTransaction.requiringNew().run(() -> {
            ApiKey ended = keys.end(id, time.instant()).orElseThrow(() -> Problem.notFound(Thing.KEY, id.toString()));
            audit.changed(by.who(), "key-ended", ended.name(), by.address());
        });
        credentials.forgetAll();
    }
}
