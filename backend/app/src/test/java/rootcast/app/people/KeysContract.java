package rootcast.app.people;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.app.people.Crew.grant;

import io.agroal.api.AgroalDataSource;
import io.quarkus.test.common.http.TestHTTPResource;
import jakarta.inject.Inject;
import java.net.URI;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/** Keys of devices and partners. */
abstract class KeysContract {

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    @TestHTTPResource("/")
    URI base;

    @Test
    void aDevicePostsReadingsOfItsSiteAndNothingElse() {
        Nursery own = Nursery.opened(time);
        Nursery other = Nursery.opened(time);
        Visitor device = device(own.site);

        assertThat(device.post("/api/readings", reading(own)).status()).isEqualTo(200);
        assertThat(device.post("/api/readings", reading(other)).status()).isEqualTo(403);
        assertThat(device.post("/api/readings", List.of(reading(own), reading(other)))
                        .status())
                .as("one of two is not its own")
                .isEqualTo(403);
        assertThat(device.get("/api/batches").status()).isEqualTo(403);
        assertThat(device.get("/api/houses").status()).isEqualTo(403);
        assertThat(new Tables(database).number("select count(*) from reading where house = '" + other.house + "'"))
                .isZero();
    }

    @Test
    void aKeyIsShownOnceAndListedWithoutItself() {
        Visitor.Answer made = Crew.key(base, grant("DEVICE", null));
        String secret = made.json().getString("key");
        String id = made.json().getString("id");
        assertThat(java.util.Base64.getUrlDecoder().decode(secret))
                .as("256 bits")
                .hasSize(32);

        Visitor.Answer list = Visitor.withToken(base).get("/api/keys");

        assertThat(list.json().getList("id")).contains(id);
        assertThat(list.body()).doesNotContain(secret);
        assertThat(new Tables(database).everything().toString()).doesNotContain(secret);
        assertThat(list.json().getString("find { it.id == '" + id + "' }.lastUsedAt"))
                .isNull();
        Visitor.withBearer(base, secret).get("/api/session");
        assertThat(Visitor.withToken(base)
                        .get("/api/keys")
                        .json()
                        .getString("find { it.id == '" + id + "' }.lastUsedAt"))
                .isEqualTo(time.instant().toString());
    }

    @Test
    void anEndedKeyOpensNothing() {
        Visitor.Answer made = Crew.key(base, grant("DEVICE", null));
        Visitor device = Visitor.withBearer(base, made.json().getString("key"));
        assertThat(device.get("/api/session").status()).isEqualTo(200);

        Visitor owner = Visitor.withToken(base);
        String id = made.json().getString("id");
        assertThat(owner.delete("/api/keys/" + id).status()).isEqualTo(204);

        Visitor.Answer refused = device.get("/api/session");
        assertThat(refused.status()).isEqualTo(401);
        assertThat(refused.type()).isEqualTo("/problems/unknown-token");
        assertThat(owner.delete("/api/keys/" + id).status()).as("again").isEqualTo(404);
    }

    @Test
    void aWrongBearerOpensNotEvenWhatIsOpen() {
        for (String wrong : List.of("wrong", "", "token-of-the-test", "token-of-the-tests2")) {
            assertThat(Visitor.withBearer(base, wrong).get("/api/about").status())
                    .as("bearer '%s'", wrong)
                    .isEqualTo(401);
        }
    }

    @Test
    void aSecretWorksOnlyTheWayItWasGivenFor() {
        String key = Crew.key(base, grant("DEVICE", null)).json().getString("key");
        String name = Crew.person(base, grant("SALES", null));
        String session = Visitor.secretOf(Visitor.nobody(base).signIn(name, Crew.PASSWORD));

        assertThat(Visitor.withCookie(base, key).get("/api/session").status()).isEqualTo(401);
        assertThat(Visitor.withBearer(base, session).get("/api/session").status())
                .isEqualTo(401);
    }

    @Test
    void theTokenKeepsEveryRight() {
        Visitor.Answer who = Visitor.withToken(base).get("/api/session");

        assertThat(who.json().getString("name")).isEqualTo("token");
        assertThat(who.json().getList("grants.role")).containsExactly("OWNER");
        assertThat(Visitor.withToken(base).get("/api/session/all").status())
                .as("a token has no sessions")
                .isEqualTo(403);
    }

    @Test
    void aPartnerWaitsForTheOrderRoom() {
        Visitor partner = Visitor.withBearer(
                base, Crew.key(base, grant("PARTNER", null)).json().getString("key"));

        for (String path : List.of("/api/board", "/api/orders", "/api/batches", "/api/sites")) {
            assertThat(partner.get(path).status()).as(path).isEqualTo(403);
        }
    }

    @Test
    void rolesOfPeopleAreNotForKeys() {
        for (String role : List.of("OWNER", "MANAGER", "PRODUCTION", "SALES")) {
            assertThat(Visitor.withToken(base)
                            .post("/api/keys", Map.of("name", "k", "grants", List.of(grant(role, null))))
                            .status())
                    .as(role)
                    .isEqualTo(422);
        }
    }

    private Visitor device(String site) {
        return Visitor.withBearer(
                base, Crew.key(base, grant("DEVICE", site)).json().getString("key"));
    }

    private Map<String, Object> reading(Nursery nursery) {
        return Map.of(
                "house",
                nursery.house,
                "quantity",
                "medium-temperature",
                "value",
                21.5,
                "unit",
                "Cel",
                "at",
                time.instant().minus(Duration.ofMinutes(5)).toString());
    }
}
