package rootcast.app.people;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import rootcast.app.people.store.KeyStore;
import rootcast.app.people.store.Persons;
import rootcast.app.people.store.SessionStore;
import rootcast.app.wiring.RootcastConfig;

/**
 * Who a cookie or a bearer token stands for. What was looked up is believed for some seconds: a request costs no look
 * into the database, and what was ended on one node stops on all within that.
 */
@ApplicationScoped
public class Credentials {

    private static final int MOST_BELIEVED = 10_000;

    /** Last seen is for people to read; once a minute is enough. */
    private static final Duration SEEN_EVERY = Duration.ofMinutes(1);

    @Inject
    SessionStore sessions;

    @Inject
    Persons persons;

    @Inject
    KeyStore keys;

    @Inject
    PeopleConfig config;

    @Inject
    RootcastConfig application;

    @Inject
    InstantSource time;

    private final Map<String, Believed> believed = new ConcurrentHashMap<>();

    private record Believed(Asking asking, Instant since) {}

    /** The answer if it needs no look into the database. */
    public Optional<Asking> known(String secret) {
        return isToken(secret) ? Optional.of(Asking.TOKEN) : stillBelieved(Secrets.hash(secret));
    }

    /** Looks it up; not for an event loop. */
    public Asking lookUp(String secret) {
        return isToken(secret) ? Asking.TOKEN : asking(Secrets.hash(secret));
    }

    /** Forgets what was looked up on this node, after something has changed. */
    void forgetAll() {
        believed.clear();
    }

    Asking asking(String hash) {
        return stillBelieved(hash).orElseGet(() -> {
            Instant now = time.instant();
            Asking found = QuarkusTransaction.requiringNew().call(() -> find(hash, now));
            if (found.isSignedIn()) {
                if (believed.size() >= MOST_BELIEVED) {
                    believed.clear();
                }
                believed.put(hash, new Believed(found, now));
            }
            return found;
        });
    }

    private Optional<Asking> stillBelieved(String hash) {
        Believed before = believed.get(hash);
        Instant now = time.instant();
        boolean fresh = before != null
                && !now.isBefore(before.since())
                && now.isBefore(before.since().plus(config.believed()));
        return fresh ? Optional.of(before.asking()) : Optional.empty();
    }

    private Asking find(String hash, Instant now) {
        return sessions.ofSecret(hash)
                .map(session -> ofSession(session, now))
                .or(() -> keys.ofSecret(hash).map(key -> ofKey(key, now)))
                .orElse(Asking.NOBODY);
    }

    private Asking ofSession(Session session, Instant now) {
        boolean over = now.isAfter(session.lastSeenAt().plus(config.idle()))
                || now.isAfter(session.begunAt().plus(config.longest()));
        Optional<Person> person =
                over ? Optional.empty() : persons.named(session.person()).filter(Person::active);
        if (person.isPresent() && !now.isBefore(session.lastSeenAt().plus(SEEN_EVERY))) {
            sessions.seen(session.id(), now);
        }
        return person.map(found -> new Asking(
                        Asking.Kind.PERSON,
                        new Who(found.name()),
                        found.displayName(),
                        found.grants(),
                        session.secretHash()))
                .orElse(Asking.NOBODY);
    }

    private Asking ofKey(ApiKey key, Instant now) {
        if (key.endedAt() != null) {
            return Asking.NOBODY;
        }
        Instant last = key.lastUsedAt();
        if (last == null || !now.isBefore(last.plus(SEEN_EVERY))) {
            keys.used(key.id(), now);
        }
        return new Asking(Asking.Kind.KEY, new Who("key:" + key.name()), key.name(), key.grants(), key.secretHash());
    }

    private boolean isToken(String shown) {
        return application.token().isPresent()
                && MessageDigest.isEqual(
                        shown.getBytes(StandardCharsets.UTF_8),
                        application.token().get().getBytes(StandardCharsets.UTF_8));
    }
}
