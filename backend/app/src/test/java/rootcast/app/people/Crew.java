package rootcast.app.people;

import java.net.URI;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/** Invented people with names that no other test has, added through the API. */
final class Crew {

    static final String PASSWORD = "willow and birch 7";

    private static final AtomicInteger ADDED = new AtomicInteger();

    private Crew() {}

    /** Adds a person and gives the name. */
    @SafeVarargs
    static String person(URI base, Map<String, String>... grants) {
        String name = "hand" + ADDED.incrementAndGet();
        Visitor.Answer added = Visitor.withToken(base).post("/api/people", body(name, grants));
        if (added.status() != 201) {
            throw new AssertionError(added.toString());
        }
        return name;
    }

    @SafeVarargs
    static Visitor signedIn(URI base, Map<String, String>... grants) {
        return Visitor.signedIn(base, person(base, grants), PASSWORD);
    }

    /** Gives the answer with id and key. */
    @SafeVarargs
    static Visitor.Answer key(URI base, Map<String, String>... grants) {
        Visitor.Answer made = Visitor.withToken(base)
                .post("/api/keys", Map.of("name", "device" + ADDED.incrementAndGet(), "grants", List.of(grants)));
        if (made.status() != 201) {
            throw new AssertionError(made.toString());
        }
        return made;
    }

    @SafeVarargs
    static Map<String, Object> body(String name, Map<String, String>... grants) {
        return Map.of("name", name, "displayName", "Hand " + name, "password", PASSWORD, "grants", List.of(grants));
    }

    static Map<String, String> grant(String role, @Nullable String site) {
        Map<String, String> grant = new LinkedHashMap<>();
        grant.put("role", role);
        if (site != null) {
            grant.put("site", site);
        }
        return grant;
    }
}
