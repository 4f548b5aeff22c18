package rootcast.warnings;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuietHoursTest {

    private static final QuietHours NIGHT = new QuietHours(LocalTime.of(21, 0), LocalTime.of(6, 0));

    /** Berlin is one hour ahead in winter; on 29 March 2026 at 02:00 its clocks go to 03:00, two hours ahead from then. */
    @ParameterizedTest(name = "{0} is told at {1}")
    @CsvSource({
        "2026-03-02T19:59:59Z, 2026-03-02T19:59:59Z",
        "2026-03-02T20:00:00Z, 2026-03-03T05:00:00Z",
        "2026-03-02T23:30:00Z, 2026-03-03T05:00:00Z",
        "2026-03-03T04:59:59Z, 2026-03-03T05:00:00Z",
        "2026-03-03T05:00:00Z, 2026-03-03T05:00:00Z",
        "2026-03-28T22:00:00Z, 2026-03-29T04:00:00Z",
    })
    void whatComesUpInTheNightIsToldInTheMorning(Instant raised, Instant told) {
        assertThat(NIGHT.tellAt(raised, ZoneId.of("Europe/Berlin"))).isEqualTo(told);
    }

    @Test
    void hoursWithinOneDayEndOnThatDay() {
        QuietHours noon = new QuietHours(LocalTime.of(12, 0), LocalTime.of(13, 0));

        assertThat(noon.tellAt(Instant.parse("2026-03-02T12:30:00Z"), ZoneId.of("Etc/UTC")))
                .isEqualTo("2026-03-02T13:00:00Z");
    }

    @Test
    void noneHoldsNothingBack() {
        Instant midnight = Instant.parse("2026-03-02T00:00:00Z");

        assertThat(QuietHours.NONE.tellAt(midnight, ZoneId.of("Etc/UTC"))).isEqualTo(midnight);
    }
}
