package rootcast.app.people;

import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * Who asks, and what was granted to them at that moment.
 *
 * @param credential SHA-256 of the secret that was shown, null where there was none
 */
public record Asking(
        Kind kind,
        Who who,
        String displayName,
        List<Grant> grants,
        @Nullable String credential) {

    /** How somebody came in. */
    public enum Kind {
        NOBODY,
        /** A bearer token was shown that is none of ours. */
        UNKNOWN,
        SYSTEM,
        TOKEN,
        KEY,
        PERSON
    }

    /** Under which a security identity holds this. */
    public static final String ATTRIBUTE = "rootcast.asking";

    private static final List<Grant> EVERYTHING = List.of(new Grant(Role.OWNER, null));

    public static final Asking NOBODY = new Asking(Kind.NOBODY, new Who("nobody"), "", List.of(), null);
    public static final Asking UNKNOWN = new Asking(Kind.UNKNOWN, new Who("nobody"), "", List.of(), null);
    static final Asking SYSTEM = new Asking(Kind.SYSTEM, Who.SYSTEM, "Rootcast", EVERYTHING, null);
    static final Asking TOKEN = new Asking(Kind.TOKEN, new Who("token"), "Token", EVERYTHING, null);

    public Asking {
        grants = List.copyOf(grants);
    }

    public boolean isSignedIn() {
        return kind != Kind.NOBODY && kind != Kind.UNKNOWN;
    }

    /** At one site at least. */
    public boolean may(Right right) {
        return switch (right) {
            case OPEN -> true;
            case SIGNED_IN -> isSignedIn();
            default -> grants.stream().anyMatch(grant -> grant.role().holds(right));
        };
    }

    public boolean may(Right right, String site) {
        return grants.stream().anyMatch(grant -> grant.gives(right, site));
    }

    public boolean mayEverywhere(Right right) {
        return grants.stream().anyMatch(grant -> grant.givesEverywhere(right));
    }

    public Sites sites(Right right) {
        Set<String> codes = grants.stream()
                .filter(grant -> grant.role().holds(right) && grant.site() != null)
                .map(Grant::site)
                .collect(Collectors.toSet());
        return new Sites(mayEverywhere(right), codes);
    }
}
