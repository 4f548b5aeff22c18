package rootcast.app.people;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.app.people.Crew.PASSWORD;
import static rootcast.app.people.Crew.grant;

import io.agroal.api.AgroalDataSource;
import io.quarkus.test.common.http.TestHTTPResource;
import jakarta.inject.Inject;
import java.net.URI;
import java.time.Duration;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Tables;

/** What an owner reads of refusals, and of changes of people, keys and passwords. */
abstract class AuditContract {

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    @TestHTTPResource("/")
    URI base;

    @Test
    void theAuditListTellsOfRefusalsAndChangesNewestFirst() {
        refusalsOfOtherTestsAreSummedUp();
        String name = Crew.person(base, grant("SALES", null));
        Visitor.nobody(base).signIn(name, "a wrong guess");
        time.moveOn(Duration.ofSeconds(1));
        Visitor.signedIn(base, name, PASSWORD).get("/api/keys");

        Visitor.Answer list = Visitor.withToken(base).get("/api/audit?limit=3");

        assertThat(list.json().getList("what")).containsExactly("no-right", "sign-in-failed", "person-added");
        assertThat(list.json().getList("who")).containsExactly(name, name, "token");
        assertThat(list.json().getString("[0].detail")).isEqualTo("GET /api/keys");
        assertThat(list.json().getString("[0].from")).isEqualTo("127.0.0.1");
        String at = list.json().getString("[0].at");
        assertThat(Visitor.withToken(base)
                        .get("/api/audit?limit=1&before=" + at)
                        .json()
                        .getList("what"))
                .containsExactly("sign-in-failed");
    }

    /** 60 refusals a minute are listed, then the rest is summed up. */
    @Test
    void nobodyFillsTheDiskByKnocking() {
        refusalsOfOtherTestsAreSummedUp();
        Visitor sales = Crew.signedIn(base, grant("SALES", null));
        time.moveOn(Duration.ofMinutes(2));
        Tables tables = new Tables(database);
        long before = tables.number("select count(*) from audit_line");
        for (int knock = 0; knock < 70; knock++) {
            assertThat(sales.get("/api/keys").status()).isEqualTo(403);
        }
        assertThat(tables.number("select count(*) from audit_line") - before).isEqualTo(60);
        time.moveOn(Duration.ofMinutes(2));
        sales.get("/api/keys");
        assertThat(Visitor.withToken(base).get("/api/audit?limit=2").json().getList("detail"))
                .contains("10 more refusals were not listed");
    }

    private void refusalsOfOtherTestsAreSummedUp() {
        time.moveOn(Duration.ofMinutes(2));
        Visitor.withToken(base).get("/api/session/all");
    }
}
