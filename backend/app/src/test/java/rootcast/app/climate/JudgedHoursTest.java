package rootcast.app.climate;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import rootcast.app.climate.store.Readings;
import rootcast.climate.FlagKind;
import rootcast.climate.QualityFlag;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingQuality;

/** What one write leaves to be stored, when an hour is judged more than once in it. */
class JudgedHoursTest {

    private static final HouseQuantity MEDIUM = new HouseQuantity("north", Quantity.MEDIUM_TEMPERATURE);
    private static final Instant SIX = Instant.parse("2026-03-02T06:00:00Z");
    private static final QualityFlag SPIKE =
            new QualityFlag(FlagKind.SPIKE, "probe-1", SIX.plusSeconds(60), 30, 21, 2, true);
    private static final QualityFlag STEP =
            new QualityFlag(FlagKind.STEP, "probe-1", SIX.plusSeconds(120), 24, 21, 2, false);

    private final JudgedHours judged = new JudgedHours();

    @Test
    void anHourJudgedTwiceIsStoredOnceAsJudgedLast() {
        judged.put(MEDIUM, SIX, notStored(hour(21_000_000, 1)), hour(42_000_000, 2));
        judged.put(MEDIUM, SIX, stored(hour(42_000_000, 2)), hour(63_000_000, 3));

        assertThat(judged.hours())
                .containsExactly(
                        new Readings.Hour("north", Quantity.MEDIUM_TEMPERATURE, SIX, 63_000_000, 3, 0, false, false));
    }

    @Test
    void hoursOfTwoHousesAreStoredTogether() {
        HouseQuantity south = new HouseQuantity("south", Quantity.MEDIUM_TEMPERATURE);
        judged.put(MEDIUM, SIX, notStored(hour(0, 0)), hour(21_000_000, 1));
        judged.put(south, SIX, stored(hour(0, 0)), hour(22_000_000, 1));

        assertThat(judged.hours()).extracting(Readings.Hour::house).containsExactly("north", "south");
        assertThat(judged.hours()).extracting(Readings.Hour::isStored).containsExactly(false, true);
    }

    @Test
    void aFlagThatTheSameWriteTakesBackIsNeitherRaisedNorDropped() {
        judged.put(MEDIUM, SIX, stored(hour(0, 0)), hour(0, 0, SPIKE));
        judged.put(MEDIUM, SIX, stored(hour(0, 0, SPIKE)), hour(21_000_000, 1));

        assertThat(judged.raised()).isEmpty();
        assertThat(judged.dropped()).isEmpty();
    }

    @Test
    void onlyWhatDiffersFromTheStoredFlagsIsRaisedOrDropped() {
        judged.put(MEDIUM, SIX, stored(hour(0, 1, SPIKE)), hour(24_000_000, 1, STEP));

        assertThat(judged.raised()).containsExactly(new FlagOfHouse(MEDIUM, STEP));
        assertThat(judged.dropped()).containsExactly(new FlagOfHouse(MEDIUM, SPIKE));
    }

    private static HouseWindow.KnownHour stored(ReadingQuality.Hour hour) {
        return new HouseWindow.KnownHour(true, false, hour);
    }

    private static HouseWindow.KnownHour notStored(ReadingQuality.Hour hour) {
        return new HouseWindow.KnownHour(false, false, hour);
    }

    private static ReadingQuality.Hour hour(long totalMicro, int readings, QualityFlag... flags) {
        return new ReadingQuality.Hour(totalMicro, readings, 0, List.of(flags));
    }
}
