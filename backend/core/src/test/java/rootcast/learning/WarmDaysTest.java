package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Cardinals;
import rootcast.outlook.BatchHistory.Placement;
import rootcast.outlook.DevelopmentRate;
import rootcast.outlook.HouseCurves;

/** By hand: with a straight line from 5 °C and days stated at 22, 13.5 °C runs at half the pace. */
class WarmDaysTest {

    private static final Instant STUCK = Instant.parse("2026-03-02T15:00:00Z");
    private static final WarmDays.Rates RATES =
            new WarmDays.Rates(new DevelopmentRate(new Cardinals(Cardinals.Form.LINEAR, 5, 24, 36, 22)));

    private static Instant day(double days) {
        return STUCK.plus(Duration.ofMinutes(Math.round(days * 1440)));
    }

    /** Nothing measured: A is set to 20 °C, B to 24, of C nothing is known. */
    private static HouseCurves houses() {
        HouseCurves houses = new HouseCurves(day(10));
        houses.house("A", new HourlySeries(), SetpointPlan.of(20.0));
        houses.house("B", new HourlySeries(), SetpointPlan.of(24.0));
        houses.house("C", new HourlySeries(), SetpointPlan.none());
        return houses;
    }

    private static WarmDays between(double from, double until, Placement... placements) {
        return WarmDays.between(List.of(placements), houses(), 21.5, day(from), day(until));
    }

    @Test
    void aDayGivesSoManyReferenceDaysAsItsTemperatureRuns() {
        assertThat(WarmDays.at(22, 3).gained(RATES)).isCloseTo(3, within(1e-9));
        assertThat(WarmDays.at(13.5, 4).gained(RATES)).isCloseTo(2, within(1e-9));
        assertThat(WarmDays.at(13.5, 4).meanRate(RATES)).isCloseTo(0.5, within(1e-9));
        assertThat(WarmDays.NONE.meanRate(RATES)).isZero();
        assertThat(WarmDays.at(22, 3).days()).isEqualTo(3);
    }

    @Test
    void temperaturesThatCannotBeCountAsTheNearestThatCan() {
        assertThat(WarmDays.at(-60, 1).meanC()).isCloseTo(-50, within(1e-9));
        assertThat(WarmDays.at(95, 1).meanC()).isCloseTo(79.9, within(1e-9));
        assertThat(WarmDays.at(21.43, 1).meanC()).isCloseTo(21.4, within(1e-9));
    }

    /** A day at 20 and two at 24. */
    @Test
    void eachHouseCountsWhileTheBatchStoodInIt() {
        WarmDays carried = between(1, 4, new Placement("A", STUCK), new Placement("B", day(2)));

        assertThat(carried.days()).isCloseTo(3, within(1e-9));
        assertThat(carried.meanC()).isCloseTo(68 / 3.0, within(1e-9));
        assertThat(between(0, 1, new Placement("A", STUCK), new Placement("B", day(2)))
                        .meanC())
                .as("before it was carried")
                .isCloseTo(20, within(1e-9));
        assertThat(between(2, 4, new Placement("A", STUCK), new Placement("B", day(2)))
                        .meanC())
                .as("from then on")
                .isCloseTo(24, within(1e-9));
        assertThat(between(4, 4, new Placement("A", STUCK)).days()).isZero();
    }

    @Test
    void partsOfAnHourCountAsParts() {
        WarmDays part = between(0.02, 0.1, new Placement("A", STUCK));

        assertThat(part.days()).as("from minute 29 to minute 144").isCloseTo(115 / 1440.0, within(1e-9));
    }

    @Test
    void aHouseOfWhichNothingIsKnownIsAtTheReference() {
        assertThat(between(0, 2, new Placement("C", STUCK)).meanC()).isCloseTo(21.5, within(1e-9));
    }
}
