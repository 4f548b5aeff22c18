package rootcast.app.people;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.InstantSource;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import rootcast.app.people.store.Persons;
import rootcast.app.people.store.SessionStore;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;
import rootcast.app.problem.Thing;
import rootcast.saying.Fault;

/** Signing in and out, and one's own password. */
@ApplicationScoped
public class SignIn {

    private static final int SESSION_BITS = 256;
    private static final int MOST_DEVICE = 200;

    @Inject
    Persons persons;

    @Inject
    SessionStore sessions;

    @Inject
    Passwords passwords;

    @Inject
    LockOut lockOut;

    @Inject
    Credentials credentials;

    @Inject
    Audit audit;

    @Inject
    InstantSource time;

    /** Where a request comes from: remote address, and what its browser says of itself. */
    public record From(String address, String device) {}

    /** Gives the secret of a new session, to be kept by the browser alone. */
    public String withPassword(String name, String password, From from) {
        Instant now = time.instant();
        lockOut.begin(name, from.address(), now);
        Optional<Person> person = QuarkusTransaction.requiringNew().call(() -> persons.named(name));
        String hash = person.filter(Person::active).map(Person::passwordHash).orElse(null);
        if (!passwords.matches(password, hash)) {
            audit.refused(name, "sign-in-failed", "wrong name or password", from.address());
            throw new Problem(ProblemType.WRONG_NAME_OR_PASSWORD, "No account has this name and password.");
        }
        lockOut.wasRight(name, from.address());
        return begin(person.orElseThrow(), from);
    }

    /** For somebody whom somebody else vouches for: the demo's door, or a directory. */
    public String vouchedFor(Person person, From from) {
        return begin(person, from);
    }

    private String begin(Person person, From from) {
        String secret = Secrets.random(SESSION_BITS);
        Instant now = time.instant();
        String device = from.device().strip();
        Session session = new Session(
                UUID.randomUUID(),
                Secrets.hash(secret),
                Person.key(person.name()),
                now,
                now,
                device.length() > MOST_DEVICE ? device.substring(0, MOST_DEVICE) : device);
        QuarkusTransaction.requiringNew().run(() -> sessions.add(session));
        return secret;
    }

    /** The caller's sessions, the one used last first. */
    public List<Session> sessionsOf(Asking caller) {
        return sessions.of(key(caller));
    }

    public void out(Asking caller) {
        if (caller.kind() == Asking.Kind.PERSON) {
            sessions.ofSecret(caller.credential()).ifPresent(session -> sessions.end(session.id(), session.person()));
            credentials.forgetAll();
        }
    }

    public void end(Asking caller, UUID id) {
        if (!sessions.end(id, key(caller))) {
            throw Problem.notFound(Thing.SESSION, id.toString());
        }
        credentials.forgetAll();
    }

    public void outEverywhere(Asking caller) {
        sessions.endAll(key(caller));
        credentials.forgetAll();
    }

    /** Ends all other sessions: who changes a password may fear that somebody else knew it. */
    public void changePassword(Asking caller, String current, String wanted, From from) {
        lockOut.begin(caller.who().name(), from.address(), time.instant());
        Person person = persons.named(key(caller)).orElseThrow();
        if (!passwords.matches(current, person.passwordHash())) {
            audit.refused(caller.who().name(), "password-not-changed", "wrong current password", from.address());
            throw Problem.notAllowed("current", Fault.WRONG_PASSWORD);
        }
        lockOut.wasRight(caller.who().name(), from.address());
        passwords.check("password", wanted, person.name());
        String hash = passwords.hash(wanted);
        QuarkusTransaction.requiringNew().run(() -> {
            persons.save(person.withPassword(hash));
            sessions.endAllBut(Person.key(person.name()), caller.credential());
            audit.changed(caller.who().name(), "password-changed", "their own", from.address());
        });
        credentials.forgetAll();
    }

    private static String key(Asking caller) {
        if (caller.kind() != Asking.Kind.PERSON) {
            throw new Problem(
                    ProblemType.NO_PERSON, "Only people have sessions and passwords; this is a key or token.");
        }
        return Person.key(caller.who().name());
    }
}
