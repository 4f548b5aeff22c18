package rootcast.app.demo;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.app.crop.SeedTable;

class SeedTableTest {

    @Test
    void readsFieldsByTheirColumn() {
        SeedTable table = SeedTable.parse("t.csv", List.of("a,b", "1,x", "2,"));

        assertThat(table.rows()).extracting(row -> row.number("a")).containsExactly(1, 2);
        assertThat(table.rows()).extracting(row -> row.text("b")).containsExactly("x", "");
    }

    @Test
    void namesTheLineWithAFieldTooMany() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SeedTable.parse("t.csv", List.of("a,b", "1,2", "1,2,3")))
                .withMessageContaining("t.csv line 3");
    }

    @Test
    void refusesLinesOfOneOrderThatDisagree() {
        SeedTable table = SeedTable.parse(
                "orders.csv",
                List.of(
                        "order,customer,confidence,takenDaysAgo,variety,trayFormat,site,shipInDays,trays,shippedFrom",
                        "o,Customer 1,0.9,3,V,T,S,5,2,",
                        "o,Customer 2,0.9,3,V,T,S,6,2,"));

        assertThatIllegalArgumentException()
                .isThrownBy(() -> OrderPlan.all(table.rows()))
                .withMessageContaining("orders.csv line 3");
    }

    /** New York is five hours behind UTC in November, Chicago six. */
    @ParameterizedTest(name = "{0}: {2}")
    @CsvSource({
        "2026-11-25T15:00:00Z, 2026-11-25T15:00:00Z, someone is at work",
        "2026-11-25T11:59:59Z, 2026-11-25T12:00:00Z, the day starts at seven",
        "2026-11-25T20:30:00Z, 2026-11-26T12:00:00Z, too late for today",
        "2026-11-27T20:30:00Z, 2026-11-30T12:00:00Z, over the weekend",
        "2026-11-28T15:00:00Z, 2026-11-30T12:00:00Z, nobody on a Saturday",
    })
    void workGoesOnInWorkingHours(Instant asked, Instant expected, String because) {
        assertThat(new WorkingHours(ZoneId.of("America/New_York")).notBefore(asked))
                .as(because)
                .isEqualTo(expected);
    }
}
