package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.batch;
import static rootcast.outlook.GrowerFixture.constant;
import static rootcast.outlook.GrowerFixture.days;
import static rootcast.outlook.GrowerFixture.daysAfterSticking;
import static rootcast.outlook.GrowerFixture.houses;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.outlook.BatchHistory.Placement;

/**
 * What the dates' range is made of beside the batch's own pace, worked by hand for a crop whose batches all run alike: at
 * 22 °C its stages take 7, 9 and 10 days, so all that is left is the weather to come and the hours that nobody measured.
 */
class DateUncertaintyTest {

    private static final CropProfile ALIKE = GrowerFixture.crop(0, 0.97, 0.96, 0.98, 150);

    /** 90 % point of a standard normal, from tables. */
    private static final double Z = 1.2815515655;

    /**
     * How much ln(rate) changes with a degree at 22 °C: the mean of the changes to 21 and 23 °C. Sticking and callusing by
     * the beta function (Yan and Hunt 1999), worked out apart from the code; toning by its straight line from 5 °C,
     * (ln 18/17 + ln 17/16) / 2.
     */
    private static final double STICK_PER_C = 0.0795004687;

    private static final double CALLUS_PER_C = 0.0714171798;
    private static final double TONING_PER_C = 0.0588915178;

    private static Outlook outlook(BatchHistory history, HouseCurves houses) {
        return OutlookModel.outlook(history, ALIKE, TRAY_105, houses);
    }

    private static BatchHistory rootedOnDay16() {
        return batch(Map.of(Stage.ROOT, days(16)), List.of(new Placement("A", STUCK)));
    }

    /** Always 22 °C but for a gap; every day measured is alike, so the house's own spread is none. */
    private static HouseCurves withoutReadings(double fromDay, double untilDay) {
        HourlySeries series = constant(22, STUCK.minus(Duration.ofDays(20)), days(fromDay));
        for (Instant at = days(untilDay); at.isBefore(days(20)); at = at.plus(Duration.ofMinutes(20))) {
            series.add(at, 22);
        }
        return houses(days(20), "A", series);
    }

    /** An hour without reading may have been a degree off: 24 of them move the date by as much as a day at a degree off. */
    @ParameterizedTest(name = "{0} hours")
    @ValueSource(ints = {6, 24, 48})
    void hoursWithoutReadingWidenTheRangeByADegreeEach(int hours) {
        DateRange ready =
                outlook(rootedOnDay16(), withoutReadings(17, 17 + hours / 24.0)).readyAt();
        double off = Z * TONING_PER_C * hours / 24;

        assertThat(daysAfterSticking(ready.p50())).isCloseTo(26, within(1e-6));
        assertThat(daysAfterSticking(ready.p90())).isCloseTo(26 + off, within(1e-6));
        assertThat(daysAfterSticking(ready.p10())).isCloseTo(26 - off, within(1e-6));
    }

    @Test
    void hoursWithoutReadingBeforeTheLastEndThatWasSeenDoNot() {
        DateRange ready = outlook(rootedOnDay16(), withoutReadings(4, 6)).readyAt();

        assertThat(ready.p10()).isEqualTo(ready.p50()).isEqualTo(ready.p90()).isEqualTo(days(26));
    }

    @Test
    void ofAGapOverTheLastEndThatWasSeenOnlyTheHoursSinceDo() {
        DateRange ready = outlook(rootedOnDay16(), withoutReadings(15, 17)).readyAt();

        assertThat(daysAfterSticking(ready.p90())).isCloseTo(26 + Z * TONING_PER_C, within(1e-6));
    }

    /**
     * A house that was never measured: 48 hours that may have been two degrees off each, and a weather that is only known
     * by common practice, seven days 0.7 °C from their mean.
     */
    @Test
    void whereNothingNearWasMeasuredAnHourMayHaveBeenTwoDegreesOff() {
        var houses = new HouseCurves(days(18));
        houses.house("A", new HourlySeries(), SetpointPlan.of(22.0));

        DateRange ready = outlook(rootedOnDay16(), houses).readyAt();

        double weather = 8 * Math.expm1(Z * TONING_PER_C * errorOfMean(8, 7 * 0.7 * 0.7 / 6));
        double gap = Z * TONING_PER_C * 2 * 48 / 24;
        assertThat(daysAfterSticking(ready.p50())).isCloseTo(26, within(1e-6));
        assertThat(daysAfterSticking(ready.p90())).isCloseTo(26 + Math.hypot(weather, gap), within(1e-5));
    }

    /** On day 2 the batch has 5 days of sticking, 9 of callusing and 10 of toning before it. */
    @Test
    void theWeatherToComeCountsByTheStagesItFallsIn() {
        var houses = houses(days(2), "A", constant(22, STUCK.minus(Duration.ofDays(3)), days(2)));
        Outlook outlook = outlook(batch("A"), houses);

        // Of the seven days 28 February to 3 March are whole; the three that are missing are taken to be 0.7 °C off.
        double variance = 3 * 0.7 * 0.7 / 6;
        double perC = (5 * STICK_PER_C + 9 * CALLUS_PER_C + 10 * TONING_PER_C) / 24;
        double far = Z * perC * errorOfMean(24, variance);
        assertThat(leadDays(outlook.readyAt().p90(), 2)).isCloseTo(24 * Math.exp(far), within(1e-4));
        assertThat(leadDays(outlook.readyAt().p10(), 2)).isCloseTo(24 * Math.exp(-far), within(1e-4));
        double near = Z * STICK_PER_C * errorOfMean(5, variance);
        assertThat(leadDays(outlook.callusedAt().p90(), 2)).isCloseTo(5 * Math.exp(near), within(1e-4));
    }

    private static double leadDays(Instant at, double nowDay) {
        return daysAfterSticking(at) - nowDay;
    }

    /**
     * Error of the mean over so many days against the mean of the last seven, for an Ornstein-Uhlenbeck process that
     * forgets in ten days (Gillespie 1996), °C.
     */
    private static double errorOfMean(double leadDays, double variance) {
        double covariance = 100 / (7 * leadDays) * (1 - Math.exp(-0.7)) * (1 - Math.exp(-leadDays / 10));
        return Math.sqrt(variance * (block(leadDays) + block(7) - 2 * covariance));
    }

    private static double block(double days) {
        return 20 / (days * days) * (days - 10 * (1 - Math.exp(-days / 10)));
    }
}
