package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * What sensors of one house say of each other, with the limits of docs/models/climate-quality.md: a medium's temperature that stands
 * for twelve hours, hours 2 °C apart. Medians by hand.
 */
class SensorsTogetherTest extends SensorsOfAnHour {

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
            put("stuck", -60 * 11, 21.4);
            assertThat(flags()).isEmpty();

            put("stuck", -60 * 11, 21.3);
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

        /** Of b nothing but two spikes fell into the hour, so nobody knows whether it moved. */
        @Test
        void isUsedWhereOfTheOtherSensorNothingIsLeft() {
            for (double minutes : new double[] {-1, -0.7, -0.4, 60, 60.3, 60.6}) {
                put("b", minutes, 20);
            }
            put("b", 29, 27);
            put("b", 31, 27);

            ReadingQuality.Hour hour = judge(Quantity.MEDIUM_TEMPERATURE);

            assertThat(hour.flags())
                    .extracting(QualityFlag::kind)
                    .containsExactly(FlagKind.FLAT_LINE, FlagKind.SPIKE, FlagKind.SPIKE);
            assertThat(hour.readings()).isEqualTo(1);
            assertThat(hour.leftOut()).isEqualTo(2);
        }

        @Test
        void thatIsLeftOutHasNoVoteAmongTheOthers() {
            put("x", 0, 21);
            put("y", 0, 23.5);

            assertThat(flags())
                    .filteredOn(flag -> flag.kind() == FlagKind.DISAGREEMENT)
                    .containsExactly(
                            new QualityFlag(FlagKind.DISAGREEMENT, "x", TEN, 21, 23.5, 2, false),
                            new QualityFlag(FlagKind.DISAGREEMENT, "y", TEN, 23.5, 21, 2, false));
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

        @Test
        void isBetweenMeansOfTheHour() {
            put("a", 0, 20);
            put("a", 30, 22);
            put("b", 0, 25);

            assertThat(flags())
                    .containsExactly(
                            new QualityFlag(FlagKind.DISAGREEMENT, "a", TEN, 21, 25, 2, false),
                            new QualityFlag(FlagKind.DISAGREEMENT, "b", TEN, 25, 21, 2, false));
        }

        @Test
        void isNotAskedOfASensorWithoutReadingsInTheHour() {
            put("a", 0, 21);
            put("later", 90, 30);

            assertThat(flags()).isEmpty();
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
            assertThat(flags()).containsExactly(new QualityFlag(FlagKind.DISAGREEMENT, "s2", TEN, 24, 21, 2, true));

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
}
