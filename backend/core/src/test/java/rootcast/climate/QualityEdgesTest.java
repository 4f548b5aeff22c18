package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Ends of the rules' ranges, with the limits of docs/models/climate-quality.md: of a medium's temperature 4 °C for a spike, 3 for
 * a step, 2 for a disagreement. Medians by hand.
 */
class QualityEdgesTest extends SensorsOfAnHour {

    private void everyMinute(double... values) {
        for (int i = 0; i < values.length; i++) {
            put("a", i, values[i]);
        }
    }

    private static Instant minute(double minutes) {
        return TEN.plus(Duration.ofSeconds(Math.round(minutes * 60)));
    }

    @Nested
    class ASpike {

        @ParameterizedTest(name = "first at {0}, last at {1} minutes: {2} flags")
        @CsvSource({"0, 60, 1", "-0.1, 60, 0", "0, 60.1, 0"})
        void isHeldAgainstHalfAnHourToEachSide(double first, double last, int flags) {
            put("a", first, 20);
            put("a", 10, 20);
            put("a", 30, 27);
            put("a", 50, 20);
            put("a", last, 20);

            assertThat(flags()).hasSize(flags).allMatch(flag -> flag.kind() == FlagKind.SPIKE);
        }

        /** Of 20 20 20 26 26 26 20 the middle is 20; with one more to each side it would be 26, with one fewer too. */
        @Test
        void isHeldAgainstThreeReadingsToEachSide() {
            everyMinute(26, 20, 20, 20, 26, 26, 26, 20, 26);

            assertThat(flags()).contains(new QualityFlag(FlagKind.SPIKE, "a", minute(4), 26, 20, 4, true));
        }

        /** Of all seven the middle is 20, of the first five it would be 26. */
        @Test
        void isHeldAgainstThoseThatCameAfterItToo() {
            everyMinute(26, 26, 20, 26, 20, 20, 20);

            assertThat(flags()).contains(new QualityFlag(FlagKind.SPIKE, "a", minute(3), 26, 20, 4, true));
        }

        @Test
        void isMoreThanItsLimitAway() {
            everyMinute(20, 20, 20, 24, 20, 20, 20);

            assertThat(flags()).extracting(QualityFlag::kind).containsExactly(FlagKind.STEP, FlagKind.STEP);
        }

        /** The middle is 22, and of the distances from it 2: 3 · 1.4826 · 2 = 8.8956 °C are still taken as good. */
        @Test
        void ofAnUnquietRecordIsMoreThanThreeDeviationsAway() {
            everyMinute(20, 24, 22, 30, 22, 18, 24);
            assertThat(judge(Quantity.AIR_TEMPERATURE).flags()).isEmpty();

            everyMinute(20, 24, 22, 31, 22, 18, 24);
            assertThat(judge(Quantity.AIR_TEMPERATURE).flags()).singleElement().satisfies(flag -> {
                assertThat(flag.kind()).isEqualTo(FlagKind.SPIKE);
                assertThat(flag.expected()).isEqualTo(22);
                assertThat(flag.limit()).isCloseTo(8.8956, within(1e-9));
            });
        }

        @Test
        void ofLightIsNoFault() {
            everyMinute(200, 200, 200, 900, 200, 200, 200);

            assertThat(judge(Quantity.LIGHT).flags()).isEmpty();
        }
    }

    @Nested
    class AStep {

        @ParameterizedTest(name = "by {1} after {0} minutes: {2} flags")
        @CsvSource({"10, 3.1, 1", "10, 3, 0", "10, -3.1, 1", "10.1, 3.1, 0"})
        void isAChangeWithinTenMinutes(double minutes, double rise, int flags) {
            put("a", 0, 20);
            put("a", minutes, 20 + rise);

            assertThat(flags()).hasSize(flags).allMatch(flag -> flag.kind() == FlagKind.STEP);
        }

        /** The spike at minute 8 lies 18 °C from the middle of 22: what follows is held against minute 4. */
        @Test
        void afterASpikeIsCountedFromTheReadingBeforeIt() {
            afterASpike(15);
            assertThat(flags())
                    .as("11 minutes after minute 4")
                    .extracting(QualityFlag::kind)
                    .containsExactly(FlagKind.SPIKE);

            sensors.clear();
            afterASpike(14);
            assertThat(flags())
                    .filteredOn(flag -> flag.kind() == FlagKind.STEP)
                    .containsExactly(new QualityFlag(FlagKind.STEP, "a", minute(14), 24, 20, 3, false));
        }

        @Test
        void isNoneAfterASpikeThatIsItselfTenMinutesAgo() {
            for (int before : new int[] {0, 2, 4}) {
                put("a", before, 20);
            }
            put("a", 8, 40);
            put("a", 18, 24);
            put("a", 19, 24);

            assertThat(flags()).extracting(QualityFlag::kind).containsExactly(FlagKind.SPIKE);
        }

        @Test
        void areInOrderOfTimeWhicheverSensorMadeThem() {
            put("a", 0, 20);
            put("a", 4, 24);
            put("b", 0, 20);
            put("b", 1, 24);

            assertThat(flags()).extracting(QualityFlag::sensor).containsExactly("b", "a");
        }

        private void afterASpike(int minute) {
            for (int before : new int[] {0, 2, 4}) {
                put("a", before, 20);
            }
            put("a", 8, 40);
            put("a", minute, 24);
            put("a", 17, 24);
        }
    }

    /** Half an hour back for spikes, eleven hours on for flat lines. */
    @Test
    void aReadingReachesFromHalfAnHourBeforeToElevenHoursAfter() {
        assertThat(ReadingQuality.reachedFrom(List.of(minute(29)))).hasSize(13).contains(HOUR - 1, HOUR + 11);
        assertThat(ReadingQuality.reachedFrom(List.of(minute(30)))).hasSize(12).contains(HOUR, HOUR + 11);
        assertThat(ReadingQuality.reachedFrom(List.of())).isEmpty();
    }

    /** The eleven hours before it, and the readings of half an hour before those. */
    @Test
    void anHourIsJudgedFromTwelveHoursBefore() {
        assertThat(ReadingQuality.neededFrom(HOUR)).isEqualTo(HOUR - 12);
        assertThat(new ReadingQuality(Quantity.EC, sensors).quantity()).isEqualTo(Quantity.EC);
    }

    @Test
    void flagsAreInOrderOfTimeThenSensorThenRule() {
        QualityFlag first = new QualityFlag(FlagKind.STEP, "b", TEN, 1, 1, 1, false);
        QualityFlag second = new QualityFlag(FlagKind.SPIKE, "a", minute(1), 1, 1, 1, true);
        QualityFlag third = new QualityFlag(FlagKind.STEP, "a", minute(1), 1, 1, 1, true);
        QualityFlag fourth = new QualityFlag(FlagKind.SPIKE, "b", minute(1), 1, 1, 1, true);

        assertThat(List.of(fourth, third, first, second).stream().sorted(QualityFlag.ORDER))
                .containsExactly(first, second, third, fourth);
    }

    @Test
    void rulesAreReadBackByTheirWords() {
        for (FlagKind kind : FlagKind.values()) {
            assertThat(FlagKind.ofWireName(kind.wireName())).contains(kind);
        }
        assertThat(FlagKind.FLAT_LINE.wireName()).isEqualTo("flat-line");
        assertThat(FlagKind.ofWireName("flat")).isEmpty();
    }
}
