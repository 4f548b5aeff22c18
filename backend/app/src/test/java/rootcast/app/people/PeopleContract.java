package rootcast.app.people;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static rootcast.app.people.Crew.PASSWORD;
import static rootcast.app.people.Crew.grant;

import io.agroal.api.AgroalDataSource;
import io.quarkus.test.common.http.TestHTTPResource;
import jakarta.inject.Inject;
import java.net.URI;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.app.Clients;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;

/** What an owner does with people, the first owner, and who stands beside what was written. */
abstract class PeopleContract {

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    @Inject
    FirstOwner firstOwner;

    @Inject
    DirectorySignIn directory;

    @TestHTTPResource("/")
    URI base;

    @Test
    void anOwnerAddsPeopleWhoThenSignIn() {
        Visitor owner = Crew.signedIn(base, grant("OWNER", null));
        String name = "new-" + UUID.randomUUID().toString().substring(0, 8);

        Visitor.Answer added = owner.post("/api/people", Crew.body(name, grant("PRODUCTION", null)));

        assertThat(added.status()).isEqualTo(201);
        assertThat(added.body()).doesNotContain(PASSWORD).doesNotContain("$2");
        assertThat(owner.get("/api/people").json().getList("name")).contains(name);
        assertThat(Visitor.nobody(base).signIn(name, PASSWORD).status()).isEqualTo(204);
        assertThat(owner.post("/api/people", Crew.body(name.toUpperCase(java.util.Locale.ROOT)))
                        .status())
                .as("the same name in capitals")
                .isEqualTo(409);
    }

    @ParameterizedTest
    @CsvSource({
        "short one,,422,password",
        "a-fine-name,tooshort9,422,password",
        "a-fine-name,a-fine-NAME,422,password",
        "token,willow and birch 7,422,name",
        "a:name,willow and birch 7,422,name",
    })
    void badNamesAndPasswordsAreRefused(String name, String password, int status, String field) {
        Visitor.Answer refused = Visitor.withToken(base)
                .post(
                        "/api/people",
                        Map.of(
                                "name",
                                name,
                                "displayName",
                                "Hand",
                                "password",
                                password == null ? "123456789" : password,
                                "grants",
                                List.of()));

        assertThat(refused.status()).isEqualTo(status);
        assertThat(refused.json().getString("errors[0].field")).isEqualTo(name.contains(" ") ? "name" : field);
        assertThat(refused.body()).as("a password is never repeated").doesNotContain("tooshort9");
    }

    /** bcrypt reads 72 bytes: 36 letters of two bytes are allowed, 37 are not. */
    @Test
    void aPasswordThatWouldBeCutIsRefused() {
        Visitor owner = Visitor.withToken(base);
        String name = Crew.person(base, grant("SALES", null));

        assertThat(owner.post("/api/people/" + name + "/password", Map.of("password", "é".repeat(37)))
                        .status())
                .isEqualTo(422);
        assertThat(owner.post("/api/people/" + name + "/password", Map.of("password", "é".repeat(36)))
                        .status())
                .isEqualTo(204);
        assertThat(Visitor.nobody(base).signIn(name, "é".repeat(36)).status()).isEqualTo(204);
        assertThat(Visitor.nobody(base).signIn(name, "é".repeat(36) + "x").status())
                .isEqualTo(401);
    }

    @Test
    void grantsFitPeopleAndSitesThatExist() {
        Visitor owner = Visitor.withToken(base);

        assertThat(owner.post("/api/people", Crew.body("g1", grant("DEVICE", null)))
                        .status())
                .isEqualTo(422);
        assertThat(owner.post("/api/people", Crew.body("g2", grant("SALES", "NOWHERE")))
                        .status())
                .isEqualTo(422);
        assertThat(owner.post("/api/people", Crew.body("g3", grant("BOSS", null)))
                        .status())
                .isEqualTo(400);
    }

    @Test
    void changedGrantsCountAtOnceAndSwitchedOffPeopleAreOut() {
        Visitor owner = Visitor.withToken(base);
        String name = Crew.person(base, grant("PRODUCTION", null));
        Visitor hand = Visitor.signedIn(base, name, PASSWORD);
        assertThat(hand.get("/api/people").status()).isEqualTo(403);

        owner.put("/api/people/" + name, Map.of("displayName", "Hand", "grants", List.of(grant("OWNER", null))));
        assertThat(hand.get("/api/people").status()).isEqualTo(200);

        owner.put(
                "/api/people/" + name,
                Map.of("displayName", "Hand", "grants", List.of(grant("OWNER", null)), "active", false));
        assertThat(hand.get("/api/people").status()).isEqualTo(401);
        assertThat(Visitor.nobody(base).signIn(name, PASSWORD).status()).isEqualTo(401);
    }

    @Test
    void anOwnerSetsAPasswordAndEndsSessions() {
        Visitor owner = Visitor.withToken(base);
        String name = Crew.person(base, grant("SALES", null));
        Visitor first = Visitor.signedIn(base, name, PASSWORD);

        assertThat(owner.delete("/api/people/" + name + "/sessions").status()).isEqualTo(204);
        assertThat(first.get("/api/session").status()).isEqualTo(401);

        Visitor second = Visitor.signedIn(base, name, PASSWORD);
        owner.post("/api/people/" + name + "/password", Map.of("password", "quite another 1"));
        assertThat(second.get("/api/session").status()).isEqualTo(401);
        assertThat(Visitor.nobody(base).signIn(name, "quite another 1").status())
                .isEqualTo(204);
    }

    @Test
    void theLastOwnerStays() throws Exception {
        nobodyAtAll();
        String one = Crew.person(base, grant("OWNER", null));
        Map<String, Object> noLonger = Map.of("displayName", "Hand", "grants", List.of(grant("SALES", null)));
        Visitor.Answer refused = Visitor.withToken(base).put("/api/people/" + one, noLonger);
        assertThat(refused.status()).isEqualTo(409);
        assertThat(refused.type()).isEqualTo("/problems/last-owner");

        List<String> owners = List.of(one, Crew.person(base, grant("OWNER", null)));
        List<Integer> answers = Clients.together(2, client -> (Callable<Integer>) () -> Visitor.withToken(base)
                .put("/api/people/" + owners.get(client), noLonger)
                .status());
        assertThat(answers).as("both at once").containsExactlyInAnyOrder(200, 409);
    }

    @Test
    void ofTwoWhoAddTheSameNameAtOnceOneIsTold() throws Exception {
        Crew.person(base, grant("OWNER", null));

        assertThat(addedTogether("/api/people")).containsExactlyInAnyOrder(201, 409, 409, 409);
        assertThat(addedTogether("/api/keys")).containsExactlyInAnyOrder(201, 409, 409, 409);
    }

    @Test
    void ofTwoWhoAddTheSameNameAtOnceWhereNobodyIsYetOneIsTold() throws Exception {
        nobodyAtAll();
        assertThat(addedTogether("/api/people")).containsExactlyInAnyOrder(201, 409, 409, 409);

        nobodyAtAll();
        assertThat(addedTogether("/api/keys")).containsExactlyInAnyOrder(201, 409, 409, 409);
    }

    /** Four clients add one name at the same moment, of somebody or of a key. */
    private List<Integer> addedTogether(String path) throws Exception {
        String name = "Same" + UUID.randomUUID().toString().substring(0, 8);
        Map<String, Object> body = path.equals("/api/keys")
                ? Map.of("name", name, "grants", List.of(grant("DEVICE", null)))
                : Crew.body(name, grant("SALES", null));
        return Clients.together(4, client -> (Callable<Integer>)
                () -> Visitor.withToken(base).post(path, body).status());
    }

    @Test
    void theSecretOfTheFirstStartMakesOneOwner() throws Exception {
        nobodyAtAll();
        assertThat(Visitor.nobody(base).get("/api/about").json().getBoolean("needsOwner"))
                .isTrue();
        String secret = firstOwner.newSecret();
        String ofAnotherNode = firstOwner.newSecret();
        Map<String, Object> body =
                Map.of("secret", secret, "name", "grower", "displayName", "The grower", "password", PASSWORD);

        assertThat(Visitor.nobody(base)
                        .post("/api/owner", with(body, "secret", "AAAAAAAAAAAAAAAAAAAAAA"))
                        .status())
                .isEqualTo(403);
        List<Integer> answers = Clients.together(4, client -> (Callable<Integer>) () -> Visitor.nobody(base)
                .post("/api/owner", with(body, "name", "grower" + client))
                .status());
        assertThat(answers).containsExactlyInAnyOrder(201, 403, 403, 403);
        assertThat(Visitor.nobody(base)
                        .post("/api/owner", with(with(body, "secret", ofAnotherNode), "name", "late"))
                        .status())
                .as("the secret of another node, too late")
                .isEqualTo(403);

        assertThat(Visitor.nobody(base).get("/api/about").json().getBoolean("needsOwner"))
                .isFalse();
        String made = "grower" + answers.indexOf(201);
        assertThat(Visitor.signedIn(base, made, PASSWORD)
                        .get("/api/people")
                        .json()
                        .getList("name"))
                .containsExactly(made);
    }

    @Test
    void whoDidItStandsBesideWhatWasWritten() {
        Nursery nursery = Nursery.opened(time);
        String batch = nursery.ready(4, 400);
        String name = Crew.person(base, grant("MANAGER", null));
        Visitor manager = Visitor.signedIn(base, name, PASSWORD);

        manager.post("/api/batches/" + batch + "/entries", nursery.entry("count", Map.of("plants", 380)));
        Visitor.Answer order =
                manager.post("/api/orders", Nursery.orderBody(List.of(nursery.line(nursery.nextMonday(), 2))));
        manager.put("/api/sites/" + nursery.site, nursery.siteBody("Etc/UTC"));

        assertThat(order.json().getString("recordedBy")).isEqualTo(name);
        assertThat(Nursery.entries(batch).getList("recordedBy")).contains("token", name);
        String id = order.json().getString("id");
        assertThat(manager.delete("/api/orders/" + id).status()).isEqualTo(204);
        assertThat(manager.get("/api/orders/" + id).json().getString("releasedBy"))
                .isEqualTo(name);
        assertThat(new Tables(database).rows("select what from setup_change where recorded_by = '" + name + "'"))
                .containsExactly("PUT /api/sites/" + nursery.site);
    }

    @Test
    void whatADirectorySaysOfSomebodyAreTheirGrants() {
        Nursery nursery = Nursery.opened(time);
        String name = "dir-" + nursery.site;
        SignIn.From from = new SignIn.From("127.0.0.1", "a browser");
        List<String> said = List.of("MANAGER", "PRODUCTION@" + nursery.site, "SALES@NOWHERE", "DEVICE", "printers");

        String secret =
                directory.in(name, Set.of("groups", "name"), Map.of("groups", said, "name", "A hand")::get, from);

        Visitor.Answer who = Visitor.withCookie(base, secret).get("/api/session");
        assertThat(who.json().getString("displayName")).isEqualTo("A hand");
        assertThat(who.json().getList("grants.role")).containsExactly("MANAGER", "PRODUCTION");
        assertThat(who.json().getList("grants.site")).containsExactly(null, nursery.site);

        directory.in(name, Set.of("groups"), Map.of("groups", (Object) "SALES")::get, from);
        time.moveOn(Duration.ofSeconds(3));
        assertThat(Visitor.withCookie(base, secret).get("/api/session").json().getList("grants.role"))
                .as("as it says at the newest sign-in")
                .containsExactly("SALES");
        assertThat(Visitor.nobody(base).signIn(name, "").status())
                .as("there is no password")
                .isEqualTo(401);
        assertThatThrownBy(() -> directory.in(name, Set.of("groups"), Map.of("groups", (Object) "printers")::get, from))
                .hasMessageContaining("no role of Rootcast");
        String ofPassword = Crew.person(base, grant("SALES", null));
        assertThatThrownBy(
                        () -> directory.in(ofPassword, Set.of("groups"), Map.of("groups", (Object) "OWNER")::get, from))
                .as("an account with a password is not taken over")
                .hasMessageContaining("of another kind");
    }

    @Test
    void whoIsVouchedForMayComeInTwiceAtOnceTheFirstTime() throws Exception {
        SignIn.From from = new SignIn.From("127.0.0.1", "a test");
        for (int round = 0; round < 5; round++) {
            String name = "door-" + UUID.randomUUID().toString().substring(0, 8);

            List<String> sessions = Clients.together(
                    4,
                    client ->
                            () -> directory.in(name, Set.of("groups"), Map.of("groups", (Object) "SALES")::get, from));

            assertThat(sessions)
                    .as("one session each")
                    .doesNotHaveDuplicates()
                    .allSatisfy(secret -> assertThat(Visitor.withCookie(base, secret)
                                    .get("/api/session")
                                    .json()
                                    .getList("grants.role"))
                            .containsExactly("SALES"));
        }
    }

    private void nobodyAtAll() throws SQLException {
        Tables tables = new Tables(database);
        tables.execute("delete from person_session");
        tables.execute("delete from person_grant");
        tables.execute("delete from person");
        time.moveOn(Duration.ofSeconds(3));
    }

    private static Map<String, Object> with(Map<String, Object> body, String field, Object value) {
        Map<String, Object> changed = new java.util.HashMap<>(body);
        changed.put(field, value);
        return changed;
    }
}
