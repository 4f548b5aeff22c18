package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.junit.jupiter.api.Test;

/** Temperatures are worked by hand; {@code REFERENCE_C} is a number no rule could produce by chance. */
class FilledSeriesTest {

    private static final Instant NOW = Instant.parse("2026-03-20T00:00:00Z");
    private static final long NEXT = HourlySeries.hourOf(NOW);
    private static final double REFERENCE_C = 77;

    private final HourlySeries series = new HourlySeries();

    private void hour(long hour, double celsius) {
        series.put(hour, HourlySeries.microC(celsius), 1);
    }

    private FilledSeries filled() {
        return new FilledSeries(series, NOW, SetpointPlan.none());
    }

    private void shouldBe(long hour, double celsius, HourSource source) {
        assertThat(filled().celsius(hour, REFERENCE_C)).isCloseTo(celsius, within(1e-9));
        assertThat(filled().sourceOf(hour)).isEqualTo(source);
    }

    @Test
    void threeMissingHoursLieOnAStraightLine() {
        hour(NEXT - 10, 20);
        hour(NEXT - 6, 24);

        shouldBe(NEXT - 10, 20, HourSource.MEASURED);
        shouldBe(NEXT - 9, 21, HourSource.NEIGHBOURS);
        shouldBe(NEXT - 8, 22, HourSource.NEIGHBOURS);
        shouldBe(NEXT - 7, 23, HourSource.NEIGHBOURS);
    }

    @Test
    void fourMissingHoursAreAsTheSameHourOfTheNearestDay() {
        hour(NEXT - 50, 20);
        hour(NEXT - 45, 30);
        for (int i = 46; i <= 49; i++) {
            hour(NEXT - i - 48, 12);
            hour(NEXT - i - 24, 15);
        }
        hour(NEXT - 46 + 24, 19);

        shouldBe(NEXT - 49, 15, HourSource.SAME_HOUR);
        shouldBe(NEXT - 46, 17, HourSource.SAME_HOUR);
    }

    @Test
    void aDayMoreThanTwoWeeksAwaySaysNothing() {
        hour(NEXT - 100 - 24 * 14, 15);
        hour(NEXT - 200 - 24 * 15, 15);

        shouldBe(NEXT - 100, 15, HourSource.SAME_HOUR);
        shouldBe(NEXT - 200, REFERENCE_C, HourSource.REFERENCE);
    }

    @Test
    void aHouseWithoutReadingsIsAtItsSetpointAndWithoutOneAtTheReference() {
        var set = new FilledSeries(series, NOW, SetpointPlan.of(21.0));

        assertThat(set.celsius(NEXT - 5, REFERENCE_C)).isEqualTo(21);
        assertThat(set.celsius(NEXT + 5, REFERENCE_C)).isEqualTo(21);
        assertThat(set.sourceOf(NEXT + 5)).isEqualTo(HourSource.SETPOINT);
        shouldBe(NEXT - 5, REFERENCE_C, HourSource.REFERENCE);
        shouldBe(NEXT + 5, REFERENCE_C, HourSource.REFERENCE);
    }

    @Test
    void hoursToComeRepeatTheMeanOfTheLastSevenDaysWithReadings() {
        for (int day = 1; day <= 9; day++) {
            for (int hour = 0; hour < 24; hour++) {
                if (day != 3) {
                    hour(NEXT - day * 24L + hour, hour + day);
                }
            }
        }

        // Days 1, 2, 4, 5, 6, 7, 8 before now: their mean is 33 / 7.
        shouldBe(NEXT + 5, 5 + 33 / 7.0, HourSource.PATTERN);
        shouldBe(NEXT + 24 * 100 + 23, 23 + 33 / 7.0, HourSource.PATTERN);
    }

    @Test
    void anHourOfTheDayThatNoDayHasLiesBetweenItsNeighboursAroundTheClock() {
        hour(NEXT - 1, 20);
        hour(NEXT - 22, 26);

        // 23:00 has 20 and 02:00 has 26: midnight and 01:00 lie between, and the long way round falls back to 20.
        shouldBe(NEXT, 22, HourSource.PATTERN);
        shouldBe(NEXT + 1, 24, HourSource.PATTERN);
        shouldBe(NEXT + 3, 26 - 6 / 21.0, HourSource.PATTERN);
    }

    @Test
    void laterReadingsDoNotShowAsOfAnEarlierInstant() {
        for (int i = 1; i <= 24; i++) {
            hour(NEXT - i, 20);
        }
        double before = filled().celsius(NEXT + 3, REFERENCE_C);
        hour(NEXT, 50);
        hour(NEXT + 24, 50);

        shouldBe(NEXT, 20, HourSource.PATTERN);
        assertThat(filled().celsius(NEXT + 3, REFERENCE_C)).isEqualTo(before);
    }

    @Test
    void theHourThatHasNotEndedIsStillToCome() {
        hour(NEXT, 20);
        var halfPast = new FilledSeries(series, NOW.plusSeconds(1_800), SetpointPlan.none());

        assertThat(halfPast.nextHour()).isEqualTo(NEXT);
        assertThat(halfPast.sourceOf(NEXT)).isEqualTo(HourSource.REFERENCE);
    }

    @Test
    void missingHoursAreCountedAndWhatBridgesThemIsNamed() {
        hour(NEXT - 10, 20);
        hour(NEXT - 8, 20);

        assertThat(filled().missingHours(NEXT - 10, NEXT + 50)).isEqualTo(8);
        assertThat(filled().bridgedBy(NEXT - 10, NEXT - 8)).containsExactly(HourSource.NEIGHBOURS);
        assertThat(filled().bridgedBy(NEXT - 10, NEXT)).containsExactly(HourSource.NEIGHBOURS, HourSource.REFERENCE);
        assertThat(filled().bridgedBy(NEXT - 8, NEXT - 7)).isEmpty();
    }

    @Test
    void anHourThatHadNotEndedBridgesNothing() {
        hour(NEXT - 2, 20);
        hour(NEXT, 26);
        hour(NEXT - 7 + 24, 15);

        shouldBe(NEXT - 1, REFERENCE_C, HourSource.REFERENCE);
        shouldBe(NEXT - 7, REFERENCE_C, HourSource.REFERENCE);
    }

    @Test
    void whatIsNotMeasuredBeforeAGapDoesNotBridgeIt() {
        hour(NEXT - 6, 24);

        shouldBe(NEXT - 7, REFERENCE_C, HourSource.REFERENCE);
        shouldBe(NEXT - 5, REFERENCE_C, HourSource.REFERENCE);
    }

    /** A reading may stand in for the same hour up to 14 days before it: 336 hours; what was measured there stays. */
    @Test
    void aReadingChangesHoursThatHadNoneUpToTwoWeeksBeforeIt() {
        assertThat(filled().firstAffectedBy(NEXT - 10)).isEqualTo(NEXT - 346);
        hour(NEXT - 346, 20);
        hour(NEXT - 345, 20);
        assertThat(filled().firstAffectedBy(NEXT - 10)).isEqualTo(NEXT - 344);
        for (int i = 11; i <= 346; i++) {
            hour(NEXT - i, 20);
        }
        hour(NEXT - 10, 20);
        assertThat(filled().firstAffectedBy(NEXT - 10)).isEqualTo(NEXT - 10);
    }

    @Test
    void aDayThatCameAfterwardsStandsInWhereNoneCameBefore() {
        hour(NEXT - 30 + 24, 19);

        shouldBe(NEXT - 30, 19, HourSource.SAME_HOUR);
    }
}
