package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.saying.Saying;

/** What people read of a reading of 41.50 where 20.25 was expected within 3. */
class FlagWordsTest {

    private static String words(Quantity quantity, FlagKind kind, boolean leftOut) {
        return FlagWords.reason(
                quantity, new QualityFlag(kind, "S", Instant.parse("2026-03-02T10:00:00Z"), 41.5, 20.25, 3, leftOut));
    }

    @ParameterizedTest(name = "{0}, left out: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "RANGE        | true  | 41.5 °C cannot be: the limit is 20.25 °C; kept, left out",
                "SPIKE        | true  | 41.5 °C is more than 3 °C from 20.25 °C, the middle of the readings around it; left out",
                "SPIKE        | false | 41.5 °C is more than 3 °C from 20.25 °C, the middle of the readings around it; named, but used",
                "STEP         | false | 41.5 °C after 20.25 °C is a change of more than 3 °C from one reading to the next; named, but used",
                "FLAT_LINE    | true  | 41.5 °C and nothing else for 12 hours; left out, since another sensor moved",
                "FLAT_LINE    | false | 41.5 °C and nothing else for 12 hours; no other sensor moved: used",
                "DISAGREEMENT | true  | the hour's 41.5 °C is more than 3 °C from 20.25 °C by the other sensors; left out",
                "DISAGREEMENT | false | the hour's 41.5 °C is more than 3 °C from 20.25 °C by the other sensors; nobody can say which is right: all are used",
                "DUPLICATE    | true  | 41.5 °C came after 20.25 °C for the same moment; the first stays",
                "CLOCK_SKEW   | true  | 41.5 °C was stamped with a time that was still to come; kept, left out",
                "LATE         | false | came more than six hours after it was measured; used",
            })
    void nameTheNumbersThatDecided(FlagKind kind, boolean leftOut, String words) {
        assertThat(words(Quantity.MEDIUM_TEMPERATURE, kind, leftOut)).isEqualTo(words);
    }

    @Test
    void numbersBearTheUnitOfTheirQuantity() {
        assertThat(words(Quantity.AIR_TEMPERATURE, FlagKind.CLOCK_SKEW, true)).startsWith("41.5 °C was");
        assertThat(words(Quantity.RELATIVE_HUMIDITY, FlagKind.CLOCK_SKEW, true)).startsWith("41.5 % was");
        assertThat(words(Quantity.LIGHT, FlagKind.CLOCK_SKEW, true)).startsWith("41.5 µmol/m²/s was");
        assertThat(words(Quantity.MEDIUM_MOISTURE, FlagKind.CLOCK_SKEW, true)).startsWith("41.5 was");
        assertThat(words(Quantity.EC, FlagKind.CLOCK_SKEW, true)).startsWith("41.5 mS/cm was");
    }

    /** The same for the screens: a code and the numbers of its sentence. */
    @ParameterizedTest(name = "{0}: {1}")
    @CsvSource(
            delimiter = '|',
            value = {
                "RANGE        | range        | 41.5 cannot be: the limit is 20.25; kept, left out",
                "SPIKE        | spike        | 41.5 is more than 3 from 20.25, the middle of the readings around it",
                "STEP         | step         | 41.5 after 20.25 is a change of more than 3 from one reading to the next",
                "FLAT_LINE    | flat-line    | 41.5 and nothing else for 12 hours",
                "DISAGREEMENT | disagreement | the hour's 41.5 is more than 3 from 20.25 by the other sensors",
                "DUPLICATE    | duplicate    | 41.5 came after 20.25 for the same moment; the first stays",
                "CLOCK_SKEW   | clock-skew   | 41.5 was stamped with a time that was still to come; kept, left out",
                "LATE         | late         | came more than six hours after it was measured; used",
            })
    void areACodeAndItsNumbersToo(FlagKind kind, String code, String english) {
        Saying said = FlagWords.remark(
                Quantity.MEDIUM_TEMPERATURE,
                new QualityFlag(kind, "S", Instant.parse("2026-03-02T10:00:00Z"), 41.5, 20.25, 3, true));

        assertThat(said.code()).isEqualTo(code);
        assertThat(said.english()).isEqualTo(english);
    }
}
