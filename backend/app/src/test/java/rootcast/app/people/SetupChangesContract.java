package rootcast.app.people;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.app.people.Crew.PASSWORD;
import static rootcast.app.people.Crew.grant;

import io.quarkus.test.common.http.TestHTTPResource;
import jakarta.inject.Inject;
import java.net.URI;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** What an owner reads of who changed the set-up. */
abstract class SetupChangesContract {

    @Inject
    HandSetClock time;

    @TestHTTPResource("/")
    URI base;

    @Test
    void whoChangedWhatIsReadNewestFirst() {
        Nursery nursery = Nursery.opened(time);
        String name = Crew.person(base, grant("MANAGER", null));
        Visitor manager = Visitor.signedIn(base, name, PASSWORD);
        manager.put("/api/sites/" + nursery.site, nursery.siteBody("Etc/UTC"));
        manager.post(
                "/api/houses/" + nursery.house + "/setpoints",
                Map.of("mediumC", 21.5, "from", time.instant().toString()));
        manager.put("/api/sites/" + nursery.site, nursery.siteBody("Europe/Paris"));

        Visitor.Answer list = changes("text=" + name);

        assertThat(list.json().getList("what"))
                .containsExactly(
                        "PUT /api/sites/" + nursery.site,
                        "POST /api/houses/" + nursery.house + "/setpoints",
                        "PUT /api/sites/" + nursery.site);
        assertThat(list.json().getList("who")).containsOnly(name);
        assertThat(list.json().getString("[0].at")).isEqualTo(time.instant().toString());
    }

    @Test
    void pagesFollowOneAnotherWithoutAGap() {
        Nursery nursery = Nursery.opened(time);
        String name = Crew.person(base, grant("MANAGER", null));
        Visitor manager = Visitor.signedIn(base, name, PASSWORD);
        for (int again = 0; again < 3; again++) {
            manager.put("/api/sites/" + nursery.site, nursery.siteBody("Etc/UTC"));
        }

        var first = changes("limit=2&text=" + name).json();
        var rest = changes("limit=2&text=%s&before=%d".formatted(name, first.getLong("[1].id")))
                .json();

        assertThat(first.getList("id")).hasSize(2);
        assertThat(rest.getList("id", Long.class)).hasSize(1).allMatch(id -> id < first.getLong("[1].id"));
    }

    /** A sign that means anything to the database means itself to who types it. */
    @Test
    void whatIsLookedForIsFoundInCapitalsOrNot() {
        Nursery nursery = Nursery.opened(time);

        assertThat(changes("text=" + nursery.house.toLowerCase(java.util.Locale.ROOT))
                        .json()
                        .getList("what"))
                .contains("POST /api/houses/" + nursery.house);
        assertThat(changes("text=%25").json().getList("id")).isEmpty();
        assertThat(changes("text=nobody-changed-this").json().getList("id")).isEmpty();
    }

    @ParameterizedTest
    @ValueSource(ints = {0, 1001})
    void aPageHasOneToAThousandLines(int limit) {
        Visitor.Answer refused = changes("limit=" + limit);

        assertThat(refused.status()).isEqualTo(400);
        assertThat(refused.json().getString("errors[0].field")).isEqualTo("limit");
    }

    private Visitor.Answer changes(String query) {
        return Visitor.withToken(base).get("/api/setup-changes?" + query);
    }
}
