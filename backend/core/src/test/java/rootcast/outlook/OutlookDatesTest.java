package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.CROP;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.batch;
import static rootcast.outlook.GrowerFixture.constant;
import static rootcast.outlook.GrowerFixture.days;
import static rootcast.outlook.GrowerFixture.daysAfterSticking;
import static rootcast.outlook.GrowerFixture.houses;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.climate.HourSource;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Cardinals;
import rootcast.crop.Stage;
import rootcast.outlook.BatchHistory.Placement;

/** Dates against closed forms worked by hand. Development at 22 °C is the profile's days: 7, 16 and 26. */
class OutlookDatesTest {

    private static Outlook outlook(BatchHistory history, HouseCurves houses) {
        return OutlookModel.outlook(history, CROP, TRAY_105, houses);
    }

    private static HouseCurves at22(double knownDays) {
        return houses(days(knownDays), "A", constant(22, STUCK.minus(Duration.ofDays(3)), days(knownDays)));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, 0.4, 3, 12.7, 40})
    void atTheReferenceTemperatureTheMedianDatesAreTheProfilesDays(double knownDays) {
        var outlook = outlook(batch("A"), at22(knownDays));

        assertThat(daysAfterSticking(outlook.callusedAt().p50())).isCloseTo(7, within(1e-6));
        assertThat(daysAfterSticking(outlook.rootedAt().p50())).isCloseTo(16, within(1e-6));
        assertThat(daysAfterSticking(outlook.readyAt().p50())).isCloseTo(26, within(1e-6));
    }

    /** ln M is normal with spread 0.1; its 90 % point is 1.2815515655 standard deviations (tables). */
    @Test
    void quantilesOfTheDateAreThoseOfTheRateTurnedRound() {
        var outlook = outlook(batch("A"), at22(5));

        assertThat(daysAfterSticking(outlook.readyAt().p10())).isCloseTo(26 / Math.exp(0.12815515655), within(1e-6));
        assertThat(daysAfterSticking(outlook.readyAt().p90())).isCloseTo(26 * Math.exp(0.12815515655), within(1e-6));
        assertThat(daysAfterSticking(outlook.callusedAt().p90())).isCloseTo(7 * Math.exp(0.12815515655), within(1e-6));
    }

    /** P(ready by day d) = Φ(ln(d / 26) / 0.1) at constant temperature; Φ from tables. */
    @ParameterizedTest(name = "{0} standard deviations of ln M: {1}")
    @CsvSource({"-2, 0.02275", "-1, 0.15866", "-0.5, 0.30854", "0, 0.5", "0.25, 0.59871", "1, 0.84134", "2.5, 0.99379"})
    void probabilityOfBeingReadyIsTheNormalOne(double deviations, double probability) {
        var ready = outlook(batch("A"), at22(5)).ready();
        Instant at = days(26 * Math.exp(0.1 * deviations));

        assertThat(ready.probabilityBy(at)).isCloseTo(probability, within(0.002));
        assertThat(Duration.between(ready.quantile(probability), at).abs()).isLessThan(Duration.ofHours(1));
    }

    @Test
    void probabilityOfBeingReadyNeverFallsAndGoesFromNoneToAll() {
        var ready = outlook(batch("A"), at22(5)).ready();
        double last = 0;
        for (int hour = 0; hour < 24 * 60; hour++) {
            double now = ready.probabilityBy(STUCK.plus(Duration.ofHours(hour)));
            assertThat(now).isBetween(last, 1.0);
            last = now;
        }

        assertThat(ready.probabilityBy(STUCK)).isZero();
        assertThat(last).isEqualTo(1);
        assertThat(ready.probabilityBy(DateDistribution.NEVER)).isEqualTo(1);
    }

    @Test
    void aCropWithoutSpreadIsReadyOnOneDate() {
        var ready = OutlookModel.outlook(batch("A"), GrowerFixture.crop(0, 0.97, 0.96, 0.98, 150), TRAY_105, at22(5))
                .ready();

        assertThat(ready.quantile(0.01)).isEqualTo(ready.quantile(0.99)).isEqualTo(days(26));
        assertThat(ready.probabilityBy(days(26).minusMillis(1))).isZero();
        assertThat(ready.probabilityBy(days(26))).isEqualTo(1);
    }

    @Test
    void aStageSeenCompleteFixesItsDateAndStartsTheNext() {
        var seen = batch(Map.of(Stage.CALLUS, days(9)), List.of(new Placement("A", STUCK)));
        // Without spread: with it, what was seen also says how fast the batch is (RateEvidenceTest).
        var crop = GrowerFixture.crop(0, 0.97, 0.96, 0.98, 150);
        var outlook = OutlookModel.outlook(seen, crop, TRAY_105, at22(10));

        assertThat(outlook.callusedAt()).isEqualTo(new DateRange(days(9), days(9), days(9)));
        assertThat(daysAfterSticking(outlook.readyAt().p50())).isCloseTo(9 + 19, within(1e-6));
    }

    @Test
    void anEndThatWasNotSeenIsNoLaterThanALaterOneThatWas() {
        var seen = batch(Map.of(Stage.ROOT, days(6)), List.of(new Placement("A", STUCK)));
        var outlook = OutlookModel.outlook(seen, GrowerFixture.crop(0, 0.97, 0.96, 0.98, 150), TRAY_105, at22(10));

        assertThat(outlook.callusedAt().p50()).isEqualTo(days(6));
        assertThat(daysAfterSticking(outlook.readyAt().p50())).isCloseTo(16, within(1e-6));
        assertThat(outlook(seen, at22(10)).callusedAt().p90()).isBeforeOrEqualTo(days(6));
    }

    @Test
    void aReadyBatchIsReadyFromWhenItWasSeen() {
        var seen = batch(Map.of(Stage.READY, days(24.5)), List.of(new Placement("A", STUCK)));
        var outlook = outlook(seen, at22(25));

        assertThat(outlook.readyAt()).isEqualTo(new DateRange(days(24.5), days(24.5), days(24.5)));
        assertThat(outlook.ready().probabilityBy(days(24.4))).isZero();
    }

    @Test
    void inAHouseTooColdForTheCropItIsNeverReady() {
        var cold = houses(days(5), "A", constant(7.5, STUCK.minus(Duration.ofDays(3)), days(5)));
        var outlook = outlook(batch("A"), cold);

        assertThat(outlook.readyAt().p10()).isEqualTo(DateDistribution.NEVER);
        assertThat(outlook.usable().at(days(100)).applyAsDouble(1)).isZero();
        assertThat(outlook.usable().isTooEarly(days(100), 0.1)).isTrue();
        assertThat(outlook.ready().probabilityBy(days(3_000))).isZero();
    }

    /** LINEAR, 5 to 24 °C, reference 22: at 5.2 °C a day gives 0.2 / 17, so ten reference-days take 850 days. */
    @Test
    void whatTakesLongerThanTheHorizonCountsAsNever() {
        var cold = houses(days(20), "A", constant(5.2, days(16), days(20)));
        var rooted = batch(Map.of(Stage.ROOT, days(16)), List.of(new Placement("A", STUCK)));

        assertThat(outlook(rooted, cold).readyAt().p50()).isEqualTo(DateDistribution.NEVER);
    }

    @Nested
    class HousesAndReadings {

        /** LINEAR stages only matter here: at 13.5 °C the toning stage runs at (13.5 − 5) / (22 − 5) = one half. */
        @Test
        void afterAMoveTheOtherHousesTemperatureCounts() {
            var houses = at22(30);
            houses.house("B", constant(13.5, STUCK.minus(Duration.ofDays(3)), days(30)), SetpointPlan.none());
            var moved = batch(Map.of(), List.of(new Placement("A", STUCK), new Placement("B", days(20))));

            // Four of ten days of toning are done at day 20; the other six take twelve.
            assertThat(daysAfterSticking(outlook(moved, houses).readyAt().p50()))
                    .isCloseTo(32, within(1e-6));
        }

        @Test
        void aNewHouseIsTakenToBeAtItsSetpointAndSaysSo() {
            var houses = new HouseCurves(days(2));
            houses.house("A", new HourlySeries(), SetpointPlan.of(22.0));
            var outlook = outlook(batch("A"), houses);

            assertThat(daysAfterSticking(outlook.readyAt().p50())).isCloseTo(26, within(1e-6));
            assertThat(outlook.missingHours()).isEqualTo(48);
            assertThat(outlook.filledFrom()).containsExactly(HourSource.SETPOINT);
            assertThat(outlook.forecastFrom()).isEqualTo(HourSource.SETPOINT);
        }

        @Test
        void withoutSetpointItIsTakenToBeAtEachStagesReference() {
            var houses = houses(days(2), "A", new HourlySeries());
            var outlook = outlook(batch("A"), houses);

            assertThat(daysAfterSticking(outlook.readyAt().p50())).isCloseTo(26, within(1e-6));
            assertThat(outlook.forecastFrom()).isEqualTo(HourSource.REFERENCE);
        }

        @Test
        void missingHoursAreBridgedAndCountedNeverTakenAsZero() {
            var series = constant(22, STUCK.minus(Duration.ofDays(3)), days(4));
            for (Instant at = days(5); at.isBefore(days(8)); at = at.plus(Duration.ofMinutes(30))) {
                series.add(at, 22);
            }
            var outlook = outlook(batch("A"), houses(days(8), "A", series));

            assertThat(outlook.missingHours()).isEqualTo(24);
            assertThat(outlook.filledFrom()).containsExactly(HourSource.SAME_HOUR);
            assertThat(outlook.forecastFrom()).isEqualTo(HourSource.PATTERN);
            assertThat(daysAfterSticking(outlook.readyAt().p50())).isCloseTo(26, within(1e-6));
        }

        /** 8 March 2026: New York's clocks go from 02:00 to 03:00, so noon to noon is 23 hours. */
        @Test
        void aDayOfAClockChangeDevelopsForItsRealHours() {
            var zone = ZoneId.of("America/New_York");
            long noon =
                    LocalDateTime.of(2026, 3, 7, 12, 0).atZone(zone).toInstant().toEpochMilli();
            long nextNoon =
                    LocalDateTime.of(2026, 3, 8, 12, 0).atZone(zone).toInstant().toEpochMilli();
            var curve = at22(20).curve("A", GrowerFixture.CALLUSING, STUCK);

            assertThat(curve.between(noon, nextNoon)).isCloseTo(23.0 / 24, within(1e-9));
        }

        @Test
        void aHouseThatNobodyNamedIsRefused() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> outlook(batch("Z"), at22(5)))
                    .withMessageContaining("'Z'");
        }
    }

    @Test
    void progressRisesFromNoneToThreeStagesWithTheSlowBelowTheFast() {
        var points =
                BatchOutlook.of(batch("A"), CROP, TRAY_105, at22(5)).progress(STUCK, days(40), Duration.ofHours(6));

        assertThat(points.get(0)).isEqualTo(new ProgressPoint(STUCK, 0, 0, 0));
        assertThat(points).hasSize(161);
        assertThat(points.get(28).p50()).as("day 7").isCloseTo(1, within(1e-6));
        assertThat(points.get(46).p50()).as("day 11.5, half of nine days").isCloseTo(1.5, within(1e-6));
        assertThat(points.get(160).p10()).isEqualTo(3);
        for (int i = 1; i < points.size(); i++) {
            assertThat(points.get(i).p50())
                    .isGreaterThanOrEqualTo(points.get(i - 1).p50());
            assertThat(points.get(i).p10()).isLessThanOrEqualTo(points.get(i).p50());
            assertThat(points.get(i).p90()).isGreaterThanOrEqualTo(points.get(i).p50());
        }
    }

    @Test
    void developmentOfAnyCourseNeverFalls() {
        var random = new Random(11);
        var series = new HourlySeries();
        for (int hour = 0; hour < 24 * 30; hour++) {
            series.add(STUCK.plus(Duration.ofHours(hour)), random.nextDouble(-5, 45));
        }
        var curve = houses(days(30), "A", series).curve("A", new Cardinals(Cardinals.Form.BETA, 8, 27, 36, 22), STUCK);
        double last = 0;
        for (int step = 0; step < 5_000; step++) {
            double now = curve.between(STUCK.toEpochMilli(), STUCK.toEpochMilli() + step * 777_777L);
            assertThat(now).as("seed 11, step %d", step).isGreaterThanOrEqualTo(last);
            last = now;
        }
    }

    @Test
    void theHistoryRefusesFactsThatContradictEachOther() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> batch(Map.of(), List.of(new Placement("A", days(1)))))
                .withMessageContaining("first placement");
        assertThatIllegalArgumentException()
                .isThrownBy(() ->
                        batch(Map.of(Stage.CALLUS, days(9), Stage.ROOT, days(8)), List.of(new Placement("A", STUCK))))
                .withMessageContaining("ROOT");
    }
}
