package rootcast.app.people;

import io.quarkus.narayana.jta.QuarkusTransaction;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.InstantSource;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.app.people.store.Persons;
import rootcast.app.people.store.SessionStore;
import rootcast.app.problem.Problem;
import rootcast.app.problem.ProblemType;
import rootcast.app.problem.Thing;
import rootcast.saying.Fault;

/** Taking people on, and what an owner changes of them. */
@ApplicationScoped
public class Staff {

    private static final Pattern NAME = Pattern.compile("[\\p{L}\\p{N}][\\p{L}\\p{N}._@-]{0,63}");

    /** What stands as "who" where nobody in person acted. */
    private static final Set<String> OURS = Set.of("rootcast", "token", "unsigned", "nobody", "demo");

    @Inject
    Persons persons;

    @Inject
    SessionStore sessions;

    @Inject
    Passwords passwords;

    @Inject
    GrantRules grantRules;

    @Inject
    Credentials credentials;

    @Inject
    Audit audit;

    @Inject
    InstantSource time;

    /** Who changes something, and from where. */
    public record By(String who, String address) {}

    public boolean isEmpty() {
        return persons.isEmpty();
    }

    public List<Person> all() {
        return persons.all();
    }

    public Person add(String name, String displayName, String password, List<Grant> grants, By by) {
        nameIsAllowed(name);
        passwords.check("password", password, name);
        grantRules.checkForPeople(grants);
        String hash = passwords.hash(password);
        return save(new Person(name, displayName, hash, Person.Origin.PASSWORD, true, time.instant(), grants), by);
    }

    /** Somebody whom a directory or the demo vouches for; their grants are what it says now. */
    public Person vouched(String name, String displayName, List<Grant> grants, Person.Origin origin, String address) {
        return QuarkusTransaction.requiringNew().call(() -> {
            persons.hold();
            Person before = persons.named(name).orElse(null);
            if (before != null && before.origin() != origin) {
                throw new Problem(
                                ProblemType.ACCOUNT_OF_ANOTHER_KIND,
                                "There is already an account '%s' of another kind.".formatted(name))
                        .with("asked", name);
            }
            if (before != null && !before.active()) {
                throw new Problem(ProblemType.ACCOUNT_OFF, "The account '%s' is switched off.".formatted(name))
                        .with("asked", name);
            }
            Person person = before == null
                    ? new Person(name, displayName, null, origin, true, time.instant(), grants)
                    : before.with(displayName, grants, true);
            if (!person.equals(before)) {
                persons.save(person);
                audit.changed(name, before == null ? "person-added" : "person-changed", text(person), address);
            }
            return person;
        });
    }

    private Person save(Person person, By by) {
        QuarkusTransaction.requiringNew().run(() -> {
            persons.hold();
            if (persons.named(person.name()).isPresent()) {
                throw nameTaken(person.name());
            }
            persons.save(person);
            audit.changed(by.who(), "person-added", text(person), by.address());
        });
        return person;
    }

    /** @param grants as they are to be from now on; sessions keep and follow them */
    public Person change(String name, String displayName, List<Grant> grants, @Nullable Boolean active, By by) {
        grantRules.checkForPeople(grants);
        Person changed = QuarkusTransaction.requiringNew().call(() -> {
            persons.hold();
            Person before = known(name);
            Person after = before.with(displayName, grants, active == null ? before.active() : active);
            someOwnerStays(before, after);
            persons.save(after);
            if (!after.active()) {
                sessions.endAll(Person.key(name));
            }
            audit.changed(by.who(), "person-changed", text(after), by.address());
            return after;
        });
        credentials.forgetAll();
        return changed;
    }

    /** Ends their sessions, too: whoever knew the old one is out. */
    public void setPassword(String name, String password, By by) {
        Person person = known(name);
        if (person.origin() != Person.Origin.PASSWORD) {
            throw new Problem(
                            ProblemType.NO_PASSWORD_HERE,
                            "'%s' signs in elsewhere and has no password here.".formatted(person.name()))
                    .with("asked", person.name());
        }
        passwords.check("password", password, person.name());
        String hash = passwords.hash(password);
        QuarkusTransaction.requiringNew().run(() -> {
            persons.hold();
            persons.save(known(name).withPassword(hash));
            sessions.endAll(Person.key(name));
            audit.changed(by.who(), "password-set", person.name(), by.address());
        });
        credentials.forgetAll();
    }

    public void endSessions(String name, By by) {
        Person person = known(name);
        QuarkusTransaction.requiringNew().run(() -> {
            sessions.endAll(Person.key(name));
            audit.changed(by.who(), "sessions-ended", person.name(), by.address());
        });
        credentials.forgetAll();
    }

    private Person known(String name) {
        return persons.named(name).orElseThrow(() -> Problem.notFound(Thing.PERSON, name));
    }

    private void someOwnerStays(Person before, Person after) {
        if (before.isOwner()
                && !after.isOwner()
                && persons.all().stream()
                        .noneMatch(each -> each.isOwner() && !each.name().equals(before.name()))) {
            throw new Problem(
                            ProblemType.LAST_OWNER,
                            "'%s' is the only active owner. Make somebody else an owner first."
                                    .formatted(before.name()))
                    .with("asked", before.name());
        }
    }

    static void nameIsAllowed(String name) {
        if (!NAME.matcher(name).matches()) {
            throw Problem.notAllowed("name", name, Fault.NOT_A_NAME);
        }
        if (OURS.contains(name.toLowerCase(Locale.ROOT))) {
            throw Problem.notAllowed("name", name, Fault.RESERVED_NAME);
        }
    }

    private static Problem nameTaken(String name) {
        return Problem.nameTaken(Thing.PERSON, name);
    }

    static String text(List<Grant> grants) {
        return grants.stream()
                .map(grant -> grant.site() == null ? grant.role().name() : grant.role() + "@" + grant.site())
                .collect(Collectors.joining(" "));
    }

    private static String text(Person person) {
        return person.name() + ": " + text(person.grants()) + (person.active() ? "" : ", switched off");
    }
}
