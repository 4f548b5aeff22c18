package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Ends of the rules' ranges, with the limits of docs/models/climate-quality.md: of a medium's temperature 4 °C for a spike, 3 for
 * a step, 2 for a disagreement. Medians by hand.
 */
class QualityEdgesTest {

    private static final Instant TEN = Instant.parse("2026-03-01T10:00:00Z");
    private static final long HOUR = HourlySeries.hourOf(TEN);

    private final Map<String, SensorReadings> sensors = new HashMap<>();

    private void put(String sensor, double minutes, double value) {
        sensors.computeIfAbsent(sensor, any -> new SensorReadings())
                .put(TEN.plus(Duration.ofSeconds(Math.round(minutes * 60))), value);
    }

    private void everyMinute(double... values) {
        for (int i = 0; i < values.length; i++) {
            put("a", i, values[i]);
        }
    }

    private ReadingQuality.Hour judge(Quantity quantity, QualityFlag.Key... overridden) {
        return new ReadingQuality(quantity, sensors).judge(HOUR, Set.of(overridden));
    }

    private List<QualityFlag> flags() {
        return judge(Quantity.MEDIUM_TEMPERATURE).flags();
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

        private void afterASpike(int minute) {
            for (int before : new int[] {0, 2, 4}) {
                put("a", before, 20);
            }
            put("a", 8, 40);
            put("a", minute, 24);
            put("a", 17, 24);
        }
    }

    @Nested
    class AFlatLine {

        @BeforeEach
        void stuck() {
            for (int hour = 0; hour < 12; hour++) {
                put("stuck", -60 * hour, 21.3);
            }
        }

        @Test
        void isTwelveHoursOfOneValueWhateverWasBefore() {
            put("stuck", -60 * 11 - 1, 22);

            assertThat(flags()).singleElement().satisfies(flag -> {
                assertThat(flag.kind()).isEqualTo(FlagKind.FLAT_LINE);
                assertThat(flag.at()).isEqualTo(TEN);
                assertThat(flag.value()).isEqualTo(21.3);
                assertThat(flag.expected()).isNaN();
                assertThat(flag.limit()).isEqualTo(12);
            });
        }

        @Test
        void isBrokenByAnotherValueInTheFirstOfThemAndInTheLast() {
            put("stuck", -60 * 11 + 30, 21.4);
            assertThat(flags()).isEmpty();

            put("stuck", -60 * 11 + 30, 21.3);
            assertThat(flags()).hasSize(1);
            put("stuck", 59, 21.4);
            assertThat(flags()).isEmpty();
        }

        @Test
        void isNoneWhereAnHourIsMissing() {
            sensors.clear();
            for (int hour = 0; hour < 12; hour++) {
                put("stuck", -60 * (hour < 11 ? hour : 12), 21.3);
            }
            assertThat(flags()).as("the first hour").isEmpty();

            sensors.clear();
            for (int hour = 0; hour < 12; hour++) {
                put("stuck", -60 * (hour == 5 ? 4 : hour), 21.3);
            }
            assertThat(flags()).as("an hour in between").isEmpty();
        }

        @Test
        void beginsWhereSomethingWasMeasured() {
            sensors.clear();
            put("stuck", -60, 21.3);

            assertThat(flags()).isEmpty();
        }

        @Test
        void thatIsOverriddenIsUsedBesideTheOther() {
            put("moving", 0, 21.5);
            assertThat(judge(Quantity.MEDIUM_TEMPERATURE).readings()).isEqualTo(1);
            QualityFlag.Key flat = flags().get(0).key();

            ReadingQuality.Hour hour = judge(Quantity.MEDIUM_TEMPERATURE, flat);

            assertThat(hour.readings()).isEqualTo(2);
            assertThat(hour.leftOut()).isZero();
            assertThat(hour.flags()).extracting(QualityFlag::key).containsExactly(flat);
        }

        /** Both stand still: neither moved, so neither is held against the other. */
        @Test
        void ofTwoSensorsLeavesOutNeither() {
            for (int hour = 0; hour < 12; hour++) {
                put("too", -60 * hour, 21.5);
            }

            assertThat(flags()).hasSize(2).noneMatch(QualityFlag::leftOut);
            assertThat(judge(Quantity.MEDIUM_TEMPERATURE).readings()).isEqualTo(2);
        }
    }

    @Nested
    class ADisagreement {

        private void means(double... celsius) {
            for (int i = 0; i < celsius.length; i++) {
                put("s" + i, 0, celsius[i]);
            }
        }

        @Test
        void ofTwoIsNamedAtBothWithTheOthersMean() {
            means(21, 23);
            assertThat(flags()).isEmpty();

            means(21, 25);
            assertThat(flags())
                    .containsExactly(
                            new QualityFlag(FlagKind.DISAGREEMENT, "s0", TEN, 21, 25, 2, false),
                            new QualityFlag(FlagKind.DISAGREEMENT, "s1", TEN, 25, 21, 2, false));
        }

        /** The middle is 22.5 and nobody else within a degree of it; of the two others the middles are 23.75, 22.5, 21.25. */
        @Test
        void ofThreeThatAllDifferLeavesOutNone() {
            means(20, 22.5, 25);

            assertThat(flags())
                    .containsExactly(
                            new QualityFlag(FlagKind.DISAGREEMENT, "s0", TEN, 20, 23.75, 2, false),
                            new QualityFlag(FlagKind.DISAGREEMENT, "s1", TEN, 22.5, 22.5, 2, false),
                            new QualityFlag(FlagKind.DISAGREEMENT, "s2", TEN, 25, 21.25, 2, false));
            assertThat(judge(Quantity.MEDIUM_TEMPERATURE).readings()).isEqualTo(3);
        }

        @Test
        void isOutvotedByMoreThanHalfWithinHalfTheLimit() {
            means(20, 21, 24);
            assertThat(flags())
                    .containsExactly(new QualityFlag(FlagKind.DISAGREEMENT, "s2", TEN, 24, 21, 2, true));

            means(20, 22, 22, 24);
            assertThat(flags())
                    .as("two of four are not most")
                    .containsExactly(
                            new QualityFlag(FlagKind.DISAGREEMENT, "s0", TEN, 20, 22, 2, false),
                            new QualityFlag(FlagKind.DISAGREEMENT, "s3", TEN, 24, 22, 2, false));
        }

        @Test
        void atItsLimitIsNone() {
            means(20, 20, 22);

            assertThat(flags()).isEmpty();
        }

        @Test
        void thatIsOverriddenIsUsed() {
            means(21, 21.4, 30);
            QualityFlag.Key key = flags().get(0).key();

            assertThat(judge(Quantity.MEDIUM_TEMPERATURE).readings()).isEqualTo(2);
            assertThat(judge(Quantity.MEDIUM_TEMPERATURE, key).readings()).isEqualTo(3);
        }
    }

    /** Half an hour back for spikes, eleven hours on for flat lines. */
    @Test
    void aReadingReachesFromHalfAnHourBeforeToElevenHoursAfter() {
        assertThat(ReadingQuality.reachedFrom(List.of(minute(29))))
                .hasSize(13)
                .contains(HOUR - 1, HOUR + 11);
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
