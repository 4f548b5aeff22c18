package rootcast.app.people;

import static org.assertj.core.api.Assertions.assertThat;
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
import java.util.concurrent.Callable;
import org.junit.jupiter.api.Test;
import rootcast.app.Clients;
import rootcast.app.HandSetClock;
import rootcast.app.Tables;

/** Signing in, staying in and getting out. */
abstract class SessionContract {

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    @Inject
    Caller caller;

    @TestHTTPResource("/")
    URI base;

    @Test
    void whoSignsInIsKnownByACookieThatNoScriptReads() {
        String name = Crew.person(base, grant("SALES", null));

        Visitor.Answer in = Visitor.nobody(base).signIn(name, PASSWORD);

        assertThat(in.status()).isEqualTo(204);
        assertThat(in.cookies())
                .singleElement()
                .asString()
                .startsWith("rootcast-session=")
                .containsIgnoringCase("HttpOnly")
                .containsIgnoringCase("SameSite=Strict")
                .containsIgnoringCase("Path=/")
                .doesNotContain("Secure");
        Visitor.Answer who = Visitor.withCookie(base, Visitor.secretOf(in)).get("/api/session");
        assertThat(who.status()).isEqualTo(200);
        assertThat(who.json().getString("name")).isEqualTo(name);
        assertThat(who.json().getString("displayName")).isEqualTo("Hand " + name);
        assertThat(who.json().getList("grants.role")).containsExactly("SALES");
        assertThat(who.json().<Object>getList("grants.site")).containsExactly((Object) null);
    }

    @Test
    void capitalsInTheNameDoNotMatterAndInThePasswordTheyDo() {
        String name = Crew.person(base, grant("SALES", null));

        assertThat(Visitor.nobody(base)
                        .signIn(name.toUpperCase(java.util.Locale.ROOT), PASSWORD)
                        .status())
                .isEqualTo(204);
        Visitor.Answer wrong = Visitor.nobody(base).signIn(name, PASSWORD.toUpperCase(java.util.Locale.ROOT));
        assertThat(wrong.status()).isEqualTo(401);
        assertThat(wrong.type()).isEqualTo("/problems/wrong-name-or-password");
        assertThat(wrong.cookies()).isEmpty();
    }

    @Test
    void nobodyIsToldWhetherANameExists() {
        String name = Crew.person(base, grant("SALES", null));

        String wrong = Visitor.nobody(base).signIn(name, "not this one").body();
        String unknown = Visitor.nobody(base).signIn(name + "x", "not this one").body();

        assertThat(unknown).isEqualTo(wrong);
    }

    @Test
    void withoutASessionItIsNotToldWhoAsks() {
        Visitor.Answer who = Visitor.nobody(base).get("/api/session");

        assertThat(who.status()).isEqualTo(401);
        assertThat(who.type()).isEqualTo("/problems/not-signed-in");
        assertThat(who.headers().get("content-type").get(0)).startsWith("application/problem+json");
    }

    @Test
    void signingOutEndsTheSessionAtOnce() {
        Visitor hand = Crew.signedIn(base, grant("SALES", null));
        assertThat(hand.get("/api/batches").status()).isEqualTo(200);

        assertThat(hand.delete("/api/session").status()).isEqualTo(204);

        assertThat(hand.get("/api/batches").status()).isEqualTo(401);
    }

    @Test
    void aSessionEndedOnAnotherNodeStopsHereWithinSeconds() throws SQLException {
        String name = Crew.person(base, grant("SALES", null));
        Visitor hand = Visitor.signedIn(base, name, PASSWORD);
        assertThat(hand.get("/api/batches").status()).isEqualTo(200);

        new Tables(database).execute("delete from person_session where person = '" + name + "'");
        time.moveOn(Duration.ofSeconds(3));

        assertThat(hand.get("/api/batches").status()).isEqualTo(401);
    }

    @Test
    void aSessionLastsAShiftWithoutUseAndThirtyDaysWithIt() throws SQLException {
        assertThat(statusOfASession(Duration.ofHours(14), Duration.ofHours(14).minusMinutes(1)))
                .as("last used just under 14 h ago")
                .isEqualTo(200);
        assertThat(statusOfASession(Duration.ofHours(15), Duration.ofHours(14).plusMinutes(1)))
                .as("last used just over 14 h ago")
                .isEqualTo(401);
        assertThat(statusOfASession(Duration.ofDays(30).minusMinutes(1), Duration.ofMinutes(2)))
                .as("begun just under 30 days ago")
                .isEqualTo(200);
        assertThat(statusOfASession(Duration.ofDays(30).plusMinutes(1), Duration.ofMinutes(2)))
                .as("begun just over 30 days ago")
                .isEqualTo(401);
    }

    private int statusOfASession(Duration begunAgo, Duration usedAgo) throws SQLException {
        String name = Crew.person(base, grant("SALES", null));
        Visitor hand = Visitor.signedIn(base, name, PASSWORD);
        new Tables(database)
                .execute(("update person_session set begun_at = timestamp with time zone '%s',"
                                + " last_seen_at = timestamp with time zone '%s' where person = '%s'")
                        .formatted(
                                time.instant().minus(begunAgo), time.instant().minus(usedAgo), name));
        return hand.get("/api/session").status();
    }

    @Test
    void usingASessionIsNotedOnceAMinute() {
        Visitor hand = Crew.signedIn(base, grant("SALES", null));
        String begun = hand.get("/api/session/all").json().getString("[0].lastSeenAt");
        time.moveOn(Duration.ofSeconds(59));
        assertThat(hand.get("/api/session/all").json().getString("[0].lastSeenAt"))
                .isEqualTo(begun);
        time.moveOn(Duration.ofSeconds(3));
        hand.get("/api/session");
        assertThat(hand.get("/api/session/all").json().getString("[0].lastSeenAt"))
                .isEqualTo(time.instant().toString());
    }

    @Test
    void aPersonSeesTheirSessionsAndEndsOneOrAll() {
        String name = Crew.person(base, grant("PRODUCTION", null));
        Visitor phone = Visitor.withCookie(
                base,
                Visitor.secretOf(
                        Visitor.nobody(base).and("User-Agent", "a phone").signIn(name, PASSWORD)));
        Visitor desk = Visitor.signedIn(base, name, PASSWORD);

        Visitor.Answer all = desk.get("/api/session/all");
        assertThat(all.json().getList("device")).hasSize(2).contains("a phone");
        assertThat(all.json().getList("findAll { it.current }.device"))
                .hasSize(1)
                .doesNotContain("a phone");
        String phones = all.json().getString("find { it.device == 'a phone' }.id");

        Visitor stranger = Crew.signedIn(base, grant("OWNER", null));
        assertThat(stranger.delete("/api/session/all/" + phones).status())
                .as("somebody else's")
                .isEqualTo(404);
        assertThat(phone.get("/api/session").status()).isEqualTo(200);
        assertThat(desk.delete("/api/session/all/" + phones).status()).isEqualTo(204);
        assertThat(phone.get("/api/session").status()).isEqualTo(401);
        assertThat(desk.get("/api/session").status()).isEqualTo(200);

        assertThat(desk.delete("/api/session/all").status()).isEqualTo(204);
        assertThat(desk.get("/api/session").status()).isEqualTo(401);
    }

    @Test
    void aChangedPasswordEndsTheOtherSessions() {
        String name = Crew.person(base, grant("SALES", null));
        Visitor other = Visitor.signedIn(base, name, PASSWORD);
        Visitor own = Visitor.signedIn(base, name, PASSWORD);
        String wanted = "larch and rowan 8";

        assertThat(own.put("/api/session/password", Map.of("current", "wrong", "password", wanted))
                        .status())
                .isEqualTo(422);
        assertThat(other.get("/api/session").status()).isEqualTo(200);
        assertThat(own.put("/api/session/password", Map.of("current", PASSWORD, "password", wanted))
                        .status())
                .isEqualTo(204);

        assertThat(own.get("/api/session").status()).isEqualTo(200);
        assertThat(other.get("/api/session").status()).isEqualTo(401);
        assertThat(Visitor.nobody(base).signIn(name, PASSWORD).status()).isEqualTo(401);
        assertThat(Visitor.nobody(base).signIn(name, wanted).status()).isEqualTo(204);
    }

    @Test
    void whatTheTablesHoldLetsNobodyIn() {
        String name = Crew.person(base, grant("SALES", null));
        String secret = Visitor.secretOf(Visitor.nobody(base).signIn(name, PASSWORD));

        String stored = new Tables(database).everything().toString();

        assertThat(stored).contains(name).doesNotContain(secret).doesNotContain(PASSWORD);
    }

    @Test
    void afterFiveFailuresInARowANameWaitsLongerAndLonger() {
        String name = Crew.person(base, grant("SALES", null));
        for (int failure = 1; failure <= 5; failure++) {
            assertThat(Visitor.nobody(base)
                            .signIn(name, "guess number " + failure)
                            .status())
                    .as("failure " + failure)
                    .isEqualTo(401);
        }
        for (int wait : List.of(1, 2, 4, 8, 16, 32, 64, 128, 256, 512, 900, 900)) {
            Visitor.Answer locked = Visitor.nobody(base).signIn(name, PASSWORD);
            assertThat(locked.status())
                    .as("with the right password, before %d s", wait)
                    .isEqualTo(429);
            assertThat(locked.type()).isEqualTo("/problems/locked-out");
            assertThat(locked.json().getInt("retryAfterSeconds")).isEqualTo(wait);
            assertThat(locked.headers().get("retry-after")).containsExactly(String.valueOf(wait));
            time.moveOn(Duration.ofSeconds(wait));
            assertThat(Visitor.nobody(base).signIn(name, "a guess more").status())
                    .isEqualTo(401);
        }
        time.moveOn(Duration.ofSeconds(900));
        assertThat(Visitor.nobody(base).signIn(name, PASSWORD).status()).isEqualTo(204);
        assertThat(Visitor.nobody(base).signIn(name, "one slip").status())
                .as("counted anew")
                .isEqualTo(401);
        assertThat(Visitor.nobody(base).signIn(name, PASSWORD).status()).isEqualTo(204);
        time.moveOn(Duration.ofMinutes(16));
    }

    @Test
    void guessesSentTogetherAreAllCounted() throws Exception {
        String name = Crew.person(base, grant("SALES", null));
        time.moveOn(Duration.ofMinutes(16));

        List<Integer> answers = Clients.together(12, client -> (Callable<Integer>)
                () -> Visitor.nobody(base).signIn(name, "guess " + client).status());

        assertThat(answers).filteredOn(status -> status == 401).hasSize(5);
        assertThat(answers).filteredOn(status -> status == 429).hasSize(7);
        time.moveOn(Duration.ofMinutes(16));
    }

    @Test
    void anAddressThatTriesManyNamesIsStoppedToo() throws SQLException {
        new Tables(database).execute("delete from sign_in_failure");
        for (int name = 0; name < 50; name++) {
            assertThat(Visitor.nobody(base)
                            .signIn("unknown" + name, "the same guess")
                            .status())
                    .isEqualTo(401);
        }
        String name = Crew.person(base, grant("SALES", null));

        assertThat(Visitor.nobody(base).signIn(name, PASSWORD).status()).isEqualTo(429);
        time.moveOn(Duration.ofMinutes(15));
        assertThat(Visitor.nobody(base).signIn(name, PASSWORD).status()).isEqualTo(204);
    }

    @Test
    void whatAnotherSitesPageSendsIsRefusedAndListed() {
        Visitor hand = Crew.signedIn(base, grant("SALES", null));

        Visitor.Answer foreign = hand.and("Origin", "https://elsewhere.example").delete("/api/session");
        assertThat(foreign.status()).isEqualTo(403);
        assertThat(foreign.type()).isEqualTo("/problems/foreign-origin");
        assertThat(hand.and("Origin", "null").delete("/api/session").status()).isEqualTo(403);
        assertThat(hand.and("Sec-Fetch-Site", "cross-site")
                        .delete("/api/session")
                        .status())
                .isEqualTo(403);

        assertThat(hand.get("/api/session").status()).as("nothing was done").isEqualTo(200);
        assertThat(Visitor.withToken(base).get("/api/audit?limit=10").json().getList("what"))
                .contains("foreign-origin");
        String own = base.getScheme() + "://" + base.getAuthority();
        assertThat(hand.and("Origin", own)
                        .and("Sec-Fetch-Site", "same-origin")
                        .delete("/api/session")
                        .status())
                .isEqualTo(204);
    }

    @Test
    void browsersAreToldToRefuseWhatIsNotOurs() {
        Map<String, List<String>> headers =
                Visitor.nobody(base).get("/api/about").headers();

        assertThat(headers.get("content-security-policy").get(0))
                .contains("default-src 'self'")
                .contains("script-src 'self'")
                .contains("frame-ancestors 'none'");
        assertThat(headers.get("x-content-type-options")).containsExactly("nosniff");
        assertThat(headers).containsKeys("referrer-policy", "permissions-policy");
        assertThat(headers).as("only behind https").doesNotContainKey("strict-transport-security");
    }

    @Test
    void outsideOfARequestItIsTheBusinessThatActs() {
        assertThat(caller.who()).isEqualTo(Who.SYSTEM);
        assertThat(caller.mayRead().includes("any site")).isTrue();
    }

    @Test
    void outsideOfTheDemoThereIsNoDoor() {
        assertThat(Visitor.nobody(base)
                        .post("/api/session/door", Map.of("door", "manager"))
                        .status())
                .isEqualTo(404);
    }
}
