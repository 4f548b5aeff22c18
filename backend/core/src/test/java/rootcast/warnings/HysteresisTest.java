package rootcast.warnings;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Rows of hours are written as letters: b bad, f fine, m within the margin, . silent. Worked out on paper. */
class HysteresisTest {

    private static final Hysteresis THREE_AND_TWO = new Hysteresis(3, 2);

    private static List<Hysteresis.Stretch> stretches(Hysteresis hysteresis, String hours) {
        return hysteresis.stretches(0, hours.length(), hour -> switch (hours.charAt((int) hour)) {
            case 'b' -> new Sign(Sign.Level.BAD, 10 + hour, 10, "Cel", List.of("B" + hour));
            case 'm' -> new Sign(Sign.Level.BETWEEN, 9.9, 10, "Cel", List.of());
            case 'f' -> Sign.FINE;
            default -> Sign.SILENT;
        });
    }

    private static String words(List<Hysteresis.Stretch> stretches) {
        StringBuilder words = new StringBuilder();
        for (Hysteresis.Stretch stretch : stretches) {
            words.append(words.isEmpty() ? "" : " and ")
                    .append(stretch.sinceHour())
                    .append('-')
                    .append(stretch.untilHour() == Hysteresis.Stretch.LASTING ? "" : stretch.untilHour())
                    .append(" raised ")
                    .append(stretch.raisedHour());
        }
        return words.isEmpty() ? "none" : words.toString();
    }

    @ParameterizedTest(name = "{0}: {1} ({2})")
    @CsvSource({
        "bbf,        none,                             two bad hours are too few",
        "fbbbff,     1-4 raised 3,                     ends where the fine hours began",
        "bbb,        0- raised 2,                      still lasts",
        "bbfbb,      none,                             a fine hour breaks the row",
        "bbmbb,      none,                             so does one within the margin",
        "bb.b,       0- raised 3,                      a silent hour does not",
        "bbbfbff,    0-5 raised 2,                     one fine hour does not end it",
        "bbbmfmff,   0-6 raised 2,                     an hour within the margin breaks the fine row",
        "bbb...f.f,  0-6 raised 2,                     silence neither ends nor renews it",
        "bbbffbbbff, 0-3 raised 2 and 5-8 raised 7,    two faults are two warnings",
        "fff,        none,                             nothing wrong",
    })
    void raisesAfterThreeBadHoursAndEndsAfterTwoFineOnes(String hours, String expected, String because) {
        assertThat(words(stretches(THREE_AND_TWO, hours))).as(because).isEqualTo(expected);
    }

    @Test
    void keepsTheWorstValueAndEveryBatchThatSuffered() {
        Hysteresis.Stretch stretch = stretches(THREE_AND_TWO, "bbbbff").get(0);

        assertThat(stretch.worst().value()).isEqualTo(13);
        assertThat(stretch.batches()).containsExactlyInAnyOrder("B0", "B1", "B2", "B3");
    }

    @Test
    void needsAnHourOfEach() {
        assertThatIllegalArgumentException().isThrownBy(() -> new Hysteresis(0, 2));
        assertThatIllegalArgumentException().isThrownBy(() -> new Hysteresis(2, 0));
    }

    @Test
    void badHoursThatRaisedNothingLeaveNoBatchBehind() {
        assertThat(stretches(THREE_AND_TWO, "bbfbbb").get(0).batches()).containsExactlyInAnyOrder("B3", "B4", "B5");
    }

    /** 12 over 10, 24 over 20 and 18 over 15: each is a fifth too much. */
    @Test
    void ofEquallyBadHoursTheFirstIsKept() {
        double[] limits = {10, 20, 15};
        Hysteresis.Stretch stretch = THREE_AND_TWO
                .stretches(0, 3, hour -> {
                    double limit = limits[(int) hour];
                    return new Sign(Sign.Level.BAD, limit + limit / 5, limit, "Cel", List.of());
                })
                .get(0);

        assertThat(stretch.worst().limit()).isEqualTo(10);
    }
}
