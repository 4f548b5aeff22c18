package rootcast.warnings;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Limit 20 with a margin of 2, worked out on paper; all numbers are exact in binary. */
class SignTest {

    private static final List<String> BATCHES = List.of("A");

    @ParameterizedTest(name = "{0} above: {1}, below: {2}")
    @CsvSource({
        "17.5, FINE,    BAD",
        "18,   FINE,    BAD",
        "18.5, BETWEEN, BAD",
        "20,   BETWEEN, BETWEEN",
        "20.5, BAD,     BETWEEN",
        "22,   BAD,     FINE",
        "22.5, BAD,     FINE",
        "NaN,  SILENT,  SILENT",
    })
    void theLimitItselfIsKeptAndTheMarginEndsAtItsFarSide(double value, Sign.Level above, Sign.Level below) {
        assertThat(Sign.above(value, 20, 2, "u", BATCHES).level()).isEqualTo(above);
        assertThat(Sign.below(value, 20, 2, "u", BATCHES).level()).isEqualTo(below);
    }

    @Test
    void excessIsAShareOfTheLimitSoThatUnitsCompare() {
        assertThat(Sign.above(25, 20, 2, "u", BATCHES).excess()).isEqualTo(0.25);
        assertThat(Sign.below(15, 20, 2, "u", BATCHES).excess()).isEqualTo(0.25);
        assertThat(Sign.below(-25, -20, 2, "u", BATCHES).excess()).isEqualTo(0.25);
        assertThat(Sign.above(1, 0, 2, "u", BATCHES).excess())
                .isGreaterThan(1e6)
                .isFinite();
    }

    @Test
    void ofTwoTheOneThatSaysMoreCounts() {
        Sign bad = Sign.above(25, 20, 2, "u", BATCHES);
        Sign between = Sign.above(19, 20, 2, "u", BATCHES);

        assertThat(bad.or(between)).isSameAs(bad);
        assertThat(between.or(bad)).isSameAs(bad);
        assertThat(between.or(Sign.FINE)).isSameAs(between);
        assertThat(Sign.SILENT.or(Sign.FINE)).isSameAs(Sign.FINE);
        assertThat(Sign.FINE.or(Sign.SILENT)).isSameAs(Sign.FINE);
        assertThat(bad.or(Sign.bad(List.of("B")))).as("the first of two alike").isSameAs(bad);
    }
}
