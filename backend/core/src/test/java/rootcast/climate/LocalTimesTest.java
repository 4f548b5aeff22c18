package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import org.junit.jupiter.api.Test;
import rootcast.saying.Saying;

/** Berlin's clocks of 2026: on 29 March 02:00 becomes 03:00, on 25 October 03:00 becomes 02:00 once more. */
class LocalTimesTest {

    private static LocalTimes inBerlin() {
        return new LocalTimes(ZoneId.of("Europe/Berlin"), DateTimeFormatter.ofPattern("yyyy-MM-dd HH:mm"));
    }

    @Test
    void aTimeIsThatOfTheSitesClock() throws LocalTimes.NoSuchTime {
        LocalTimes.Read read = inBerlin().read(" 2026-03-01 08:00 ");

        assertThat(read.at()).isEqualTo("2026-03-01T07:00:00Z");
        assertThat(read.note()).isNull();
    }

    @Test
    void aTimeThatTheClocksSkippedIsRefused() {
        assertThatThrownBy(() -> inBerlin().read("2026-03-29 02:30"))
                .isInstanceOf(LocalTimes.NoSuchTime.class)
                .hasMessage("2026-03-29T02:30 does not exist in Europe/Berlin: clocks went forward over it");
    }

    @Test
    void ofAnHourThatCameTwiceTheSecondBeginsWhereTimesGoBack() throws LocalTimes.NoSuchTime {
        LocalTimes times = inBerlin();

        assertThat(times.read("2026-10-25 01:45").note()).isNull();
        LocalTimes.Read first = times.read("2026-10-25 02:15");
        assertThat(first.at()).isEqualTo("2026-10-25T00:15:00Z");
        assertThat(first.note()).isEqualTo(Saying.of(ReadingRemark.FIRST_OF_TWO, "2026-10-25T02:15", "Europe/Berlin"));
        assertThat(times.read("2026-10-25 02:45").at()).isEqualTo("2026-10-25T00:45:00Z");
        LocalTimes.Read second = times.read("2026-10-25 02:15");
        assertThat(second.at()).isEqualTo("2026-10-25T01:15:00Z");
        assertThat(second.note().code()).isEqualTo("second-of-two");
        assertThat(times.read("2026-10-25 02:45").at()).isEqualTo("2026-10-25T01:45:00Z");
        assertThat(times.read("2026-10-25 03:15").at()).isEqualTo("2026-10-25T02:15:00Z");
    }

    @Test
    void aTimeWithItsOffsetNeedsNoClock() throws LocalTimes.NoSuchTime {
        LocalTimes times = new LocalTimes(null, DateTimeFormatter.ISO_DATE_TIME);

        assertThat(times.read("2026-03-01T08:00:00.1234567+01:00").at())
                .isEqualTo(Instant.parse("2026-03-01T07:00:00.123456Z"));
        assertThatThrownBy(() -> times.read("yesterday"))
                .isInstanceOf(LocalTimes.NoSuchTime.class)
                .hasMessageContaining("'yesterday' is no time");
        assertThatThrownBy(() -> inBerlin().read("yesterday")).hasMessageEndingWith("of the form that was given");
    }
}
