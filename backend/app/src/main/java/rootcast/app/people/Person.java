package rootcast.app.people;

import java.time.Instant;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * Somebody who signs in.
 *
 * @param passwordHash null where somebody else says who they are
 */
public record Person(
        String name,
        String displayName,
        @Nullable String passwordHash,
        Origin origin,
        boolean active,
        Instant createdAt,
        List<Grant> grants) {

    /** Who says that it is them. */
    public enum Origin {
        PASSWORD,
        DIRECTORY,
        DEMO
    }

    public Person {
        grants = List.copyOf(grants);
    }

    /** Under which a name is found: phones begin words with a capital. */
    public static String key(String name) {
        return name.strip().toLowerCase(Locale.ROOT);
    }

    boolean isOwner() {
        return active && grants.stream().anyMatch(grant -> grant.role() == Role.OWNER);
    }

    Person with(String newDisplayName, List<Grant> newGrants, boolean nowActive) {
        return new Person(name, newDisplayName, passwordHash, origin, nowActive, createdAt, newGrants);
    }

    Person withPassword(String hash) {
        return new Person(name, displayName, hash, origin, active, createdAt, grants);
    }
}
