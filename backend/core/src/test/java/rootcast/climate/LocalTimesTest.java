package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Instant;
import java.time.ZoneId;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.saying.Saying;

/** Berlin's clocks of 2026: on 29 March 02:00 becomes 03:00, on 25 October 03:00 becomes 02:00 once more. */
class LocalTimesTest {

    private static final TimeForm FORM = TimeForm.of("yyyy-MM-dd HH:mm");

    private final LocalTimes berlin = new LocalTimes(ZoneId.of("Europe/Berlin"));

    private LocalTimes.Read inBerlin(String text) throws LocalTimes.NoSuchTime {
        return berlin.read(FORM.read(text));
    }

    private LocalTimes.Read stated(String text) throws LocalTimes.NoSuchTime {
        return berlin.read(TimeForm.iso().read(text));
    }

    @Test
    void aTimeIsThatOfTheSitesClock() throws LocalTimes.NoSuchTime {
        LocalTimes.Read read = inBerlin(" 2026-03-01 08:00 ");

        assertThat(read.at()).isEqualTo("2026-03-01T07:00:00Z");
        assertThat(read.note()).isNull();
    }

    @Test
    void aTimeThatTheClocksSkippedIsRefused() {
        assertThatThrownBy(() -> inBerlin("2026-03-29 02:30"))
                .isInstanceOf(LocalTimes.NoSuchTime.class)
                .hasMessage("2026-03-29T02:30 does not exist in Europe/Berlin: clocks went forward over it");
    }

    @Test
    void ofAnHourThatCameTwiceTheSecondBeginsWhereTimesGoBack() throws LocalTimes.NoSuchTime {
        assertThat(inBerlin("2026-10-25 01:45").note()).isNull();
        LocalTimes.Read first = inBerlin("2026-10-25 02:15");
        assertThat(first.at()).isEqualTo("2026-10-25T00:15:00Z");
        assertThat(first.note()).isEqualTo(Saying.of(ReadingRemark.FIRST_OF_TWO, "2026-10-25T02:15", "Europe/Berlin"));
        assertThat(inBerlin("2026-10-25 02:45").at()).isEqualTo("2026-10-25T00:45:00Z");
        LocalTimes.Read second = inBerlin("2026-10-25 02:15");
        assertThat(second.at()).isEqualTo("2026-10-25T01:15:00Z");
        assertThat(second.note().code()).isEqualTo("second-of-two");
        assertThat(inBerlin("2026-10-25 02:45").at()).isEqualTo("2026-10-25T01:45:00Z");
        assertThat(inBerlin("2026-10-25 03:15").at()).isEqualTo("2026-10-25T02:15:00Z");
    }

    @Test
    void aTimeThatStatesItsOffsetIsThatInstant() throws LocalTimes.NoSuchTime {
        LocalTimes.Read read = stated("2026-03-01T08:00:00.1234567+01:00");

        assertThat(read.at()).isEqualTo(Instant.parse("2026-03-01T07:00:00.123456Z"));
        assertThat(read.note()).isNull();
        assertThat(stated("2026-07-01T08:00:00Z"))
                .isEqualTo(new LocalTimes.Read(Instant.parse("2026-07-01T08:00:00Z"), null));
    }

    @Test
    void anOffsetInAPatternIsNotReadOver() throws LocalTimes.NoSuchTime {
        TimeForm form = TimeForm.of("yyyy-MM-dd HH:mm XXX");

        assertThat(berlin.read(form.read("2026-03-01 08:00 Z")).at()).isEqualTo("2026-03-01T08:00:00Z");
    }

    /** The logger is never put forward: its instants are right, and so says a note. */
    @Test
    void anOffsetOfTheOtherSeasonIsTakenAndNamed() throws LocalTimes.NoSuchTime {
        LocalTimes.Read winterInJuly = stated("2026-07-01T08:00:00+01:00");
        assertThat(winterInJuly.at()).isEqualTo("2026-07-01T07:00:00Z");
        assertThat(winterInJuly.note())
                .isEqualTo(Saying.of(
                        ReadingRemark.OFFSET_OF_ANOTHER_SEASON,
                        "2026-07-01T08:00:00+01:00",
                        "+01:00",
                        "+02:00",
                        "Europe/Berlin"));
        assertThat(stated("2026-01-10T08:00:00+02:00").note().code()).isEqualTo("offset-of-another-season");
    }

    @Test
    void anOffsetThatTheClocksHereNeverShowIsRefused() {
        assertThatThrownBy(() -> stated("2026-07-01T08:00:00-05:00"))
                .hasMessage("2026-07-01T08:00:00-05:00 states -05:00, which clocks of Europe/Berlin show in no season:"
                        + " the offset or the hour is wrong");
    }

    /** Kiritimati's +14:00 is the furthest; beyond it lie offsets that parse and offsets that do not. */
    @ParameterizedTest
    @ValueSource(strings = {"+14:01", "-14:30", "+15:00", "+18:00", "-19:00", "+99:00"})
    void anOffsetThatNoClockHasIsRefusedAsSuch(String offset) {
        assertThatThrownBy(() -> TimeForm.iso().read("2026-03-01T08:00:00" + offset))
                .hasMessage("2026-03-01T08:00:00%s states %s: no clock is more than 14:00 from UTC"
                        .formatted(offset, offset));
    }

    @Test
    void theFurthestClockIsTaken() throws LocalTimes.NoSuchTime {
        LocalTimes kiritimati = new LocalTimes(ZoneId.of("Pacific/Kiritimati"));

        assertThat(kiritimati.read(TimeForm.iso().read("2026-03-01T08:00:00+14:00")))
                .isEqualTo(new LocalTimes.Read(Instant.parse("2026-02-28T18:00:00Z"), null));
    }

    @ParameterizedTest
    @ValueSource(strings = {"yesterday", "2026-02-30 08:00", "2026-06-31 08:00", "2026-06-30 24:30"})
    void whatIsNoTimeIsRefusedAndNotMovedToOne(String text) {
        assertThatThrownBy(() -> FORM.read(text)).hasMessage("'%s' is no time of the form that was given", text);
    }

    @Test
    void aRefusalCarriesItsReasonForTheScreens() {
        assertThatThrownBy(() -> inBerlin("2026-03-29 02:30"))
                .isInstanceOfSatisfying(
                        LocalTimes.NoSuchTime.class,
                        refused -> assertThat(refused.why())
                                .isEqualTo(Saying.of(
                                        ReadingRemark.NO_SUCH_LOCAL_TIME, "2026-03-29T02:30", "Europe/Berlin")));
    }
}
