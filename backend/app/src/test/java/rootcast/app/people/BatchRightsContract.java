package rootcast.app.people;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.app.people.Crew.grant;

import io.quarkus.test.common.http.TestHTTPResource;
import jakarta.inject.Inject;
import java.net.URI;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;

/** Who may import a table of batches. What the table then becomes is for the ledger's own tests. */
abstract class BatchRightsContract {

    @Inject
    HandSetClock time;

    @TestHTTPResource("/")
    URI base;

    /** Who records may write the batches of a table; what it would make new is for those who set up. */
    @Test
    void aTableOfBatchesMakesNothingForSomebodyWhoOnlyRecords() {
        Nursery nursery = Nursery.opened(time);
        Visitor records = Crew.signedIn(base, grant("PRODUCTION", nursery.site));
        Visitor setsUpHere = Crew.signedIn(base, grant("MANAGER", nursery.site));
        Visitor setsUpAll = Crew.signedIn(base, grant("MANAGER", null));
        String known = nursery.variety;

        assertThat(preview(records, nursery, nursery.house, known).status()).isEqualTo(200);
        Visitor.Answer refused = preview(records, nursery, "East house", known);
        assertThat(refused.status()).isEqualTo(403);
        assertThat(refused.json().getString("right")).isEqualTo("SET_UP");
        assertThat(preview(setsUpHere, nursery, "East house", known).status()).isEqualTo(200);
        assertThat(preview(setsUpHere, nursery, "East house", "Greyleaf 'New'").status())
                .as("a variety is shared by all sites")
                .isEqualTo(403);
        assertThat(preview(setsUpAll, nursery, "East house", "Greyleaf 'New'").status())
                .isEqualTo(200);
    }

    private static Visitor.Answer preview(Visitor who, Nursery nursery, String house, String variety) {
        return who.post(
                "/api/batches/csv?dryRun=true",
                Map.of(
                        "csv",
                        "site,house,crop,variety,tray,trays,stuck\n%s,%s,%s,%s,%s,1,%s\n"
                                .formatted(
                                        nursery.site,
                                        house,
                                        nursery.crop,
                                        variety,
                                        nursery.trayFormat,
                                        nursery.today()),
                        "columns",
                        Map.of(
                                "site",
                                "site",
                                "house",
                                "house",
                                "crop",
                                "crop",
                                "variety",
                                "variety",
                                "trayFormat",
                                "tray",
                                "trays",
                                "trays",
                                "stuckOn",
                                "stuck"),
                        "makeMissing",
                        true));
    }
}
