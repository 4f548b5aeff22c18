package rootcast.app.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import io.quarkus.test.junit.QuarkusTest;
import io.quarkus.test.junit.TestProfile;
import java.sql.SQLException;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.app.OnPostgres;

@QuarkusTest
@TestProfile(OnPostgres.class)
class GuardsOnPostgresTest extends GuardsContract {

    /** H2 has no trigger on truncation. */
    @ParameterizedTest
    @ValueSource(strings = {"truncate table posting", "truncate table ledger_entry cascade"})
    void noTableIsEmptied(String statement) {
        var before = tables.everything();

        assertThatThrownBy(() -> tables.execute(statement))
                .isInstanceOf(SQLException.class)
                .hasStackTraceContaining("append-only");

        assertThat(tables.everything()).isEqualTo(before);
    }
}
