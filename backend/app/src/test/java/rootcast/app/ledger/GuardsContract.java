package rootcast.app.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.agroal.api.AgroalDataSource;
import jakarta.inject.Inject;
import java.lang.reflect.Method;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Arrays;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.app.HandSetClock;
import rootcast.app.Nursery;
import rootcast.app.Tables;
import rootcast.ledger.Ledger;

/** Nobody changes what is recorded, not even someone with the database's password. */
abstract class GuardsContract {

    @Inject
    HandSetClock time;

    @Inject
    AgroalDataSource database;

    Tables tables;

    @BeforeEach
    void recordSomething() {
        Nursery nursery = Nursery.opened(time);
        String batch = nursery.stuck(1, Duration.ofDays(1));
        nursery.enter(batch, nursery.entry("loss", Map.of("plants", 1, "cause", "rot")))
                .statusCode(201);
        tables = new Tables(database);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "update ledger_entry set plants = 0",
                "update ledger_entry set note = note",
                "delete from ledger_entry",
                "update posting set plants = 0",
                "delete from posting",
                "delete from posting where plants < 0",
            })
    void noStatementChangesOrRemovesAnEntryOrAPosting(String statement) {
        var before = tables.everything();

        assertThatThrownBy(() -> tables.execute(statement))
                .isInstanceOf(SQLException.class)
                .hasStackTraceContaining("append-only");

        assertThat(tables.everything()).isEqualTo(before);
    }

    @Test
    void theLedgerOffersNothingButReadingAndAdding() {
        assertThat(Arrays.stream(Ledger.class.getMethods()).map(Method::getName))
                .containsExactlyInAnyOrder("batch", "entriesOf", "open", "append");
    }
}
