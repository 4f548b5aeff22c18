package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.util.Random;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TemperatureSpreadTest {

    private static final long TODAY = HourlySeries.hourOf(Instant.parse("2026-03-02T00:00:00Z"));

    private static HourlySeries days(double... meansC) {
        var series = new HourlySeries();
        for (int day = 0; day < meansC.length; day++) {
            for (int hour = 0; hour < 24; hour++) {
                series.put(TODAY - (long) (day + 1) * 24 + hour, HourlySeries.microC(meansC[day]), 1);
            }
        }
        return series;
    }

    private static TemperatureSpread of(HourlySeries series) {
        return TemperatureSpread.before(series, TODAY, SetpointPlan.none());
    }

    @Test
    void aHouseThatAlwaysHeldItsTemperatureIsExpectedToHoldIt() {
        var spread = of(days(22, 22, 22, 22, 22, 22, 22, 22));

        assertThat(spread.spreadC()).isZero();
        assertThat(spread.ofMeanOver(20)).isZero();
    }

    /** Mean square of ±1 around 22 over n − 1: eight days give √(8/7). */
    @Test
    void theSpreadIsThatOfTheDailyMeans() {
        assertThat(of(days(21, 23, 21, 23, 21, 23, 21, 23)).spreadC()).isCloseTo(Math.sqrt(8.0 / 7), within(1e-9));
    }

    /** Six of seven days missing count 0.7 °C each: √(6 · 0.49 / 6). */
    @Test
    void aNewHouseIsTakenToSpreadAsHousesUsuallyDo() {
        assertThat(of(new HourlySeries()).spreadC()).isCloseTo(0.7 * Math.sqrt(7.0 / 6), within(1e-9));
        assertThat(of(days(22)).spreadC()).isCloseTo(0.7, within(1e-9));
    }

    /** One day 10 °C low among eight level ones counts as 1.5 °C off: √(2.25 / 8). */
    @Test
    void oneDayOfAHeatingFailureIsNotExpectedToComeEveryWeek() {
        assertThat(of(days(22, 22, 22, 12, 22, 22, 22, 22, 22)).spreadC()).isCloseTo(Math.sqrt(2.25 / 8), within(1e-9));
    }

    @Test
    void aChangedSetpointIsNoSpread() {
        var plan = SetpointPlan.of(18.0).with(new SetpointPlan.Change(HourlySeries.startOf(TODAY - 96), 22.0));
        var changed = days(22, 22, 22, 22, 18, 18, 18, 18);

        assertThat(TemperatureSpread.before(changed, TODAY, plan).spreadC()).isZero();
        assertThat(TemperatureSpread.before(
                                changed, TODAY, plan.with(new SetpointPlan.Change(HourlySeries.startOf(TODAY), null)))
                        .spreadC())
                .as("the heat goes off after these days")
                .isZero();
        assertThat(of(changed).spreadC()).isGreaterThan(1.5);
    }

    /**
     * Against a simulated process with the stated correlation, seed 7: 6 000 independent courses of hourly steps; the
     * forecast is the mean of seven days, the error that of the mean of the next L.
     */
    @ParameterizedTest
    @ValueSource(ints = {1, 3, 7, 14, 30})
    void theErrorOfTheForecastMeanIsThatOfSuchAProcess(int leadDays) {
        var random = new Random(7);
        double decay = Math.exp(-1.0 / 24 / TemperatureSpread.PERSISTENCE_DAYS);
        double kick = Math.sqrt(1 - decay * decay);
        double squares = 0;
        int courses = 6_000;
        for (int course = 0; course < courses; course++) {
            double now = random.nextGaussian();
            double past = 0;
            double future = 0;
            for (int hour = 0; hour < 24 * (7 + leadDays); hour++) {
                now = decay * now + kick * random.nextGaussian();
                if (hour < 24 * 7) {
                    past += now / (24 * 7);
                } else {
                    future += now / (24.0 * leadDays);
                }
            }
            squares += (future - past) * (future - past);
        }
        var unit = of(days(21, 23, 21, 23, 21, 23, 21, 23));
        double stated = unit.ofMeanOver(leadDays) / unit.spreadC();

        assertThat(stated).isCloseTo(Math.sqrt(squares / courses), within(0.03));
    }

    /** A day with 18 hours has a mean, one with 17 has none: seven level days of 22 and one of 18, √((16 → 2.25) / 7). */
    @Test
    void aDayHasAMeanFrom18HoursOn() {
        HourlySeries series = days(22, 22, 22, 22, 22, 22, 22, 18);
        for (int hour = 0; hour < 6; hour++) {
            series.put(TODAY - 8 * 24 + hour, 0, 0);
        }
        assertThat(of(series).spreadC()).isCloseTo(Math.sqrt(2.25 / 7), within(1e-9));

        series.put(TODAY - 8 * 24 + 6, 0, 0);
        assertThat(of(series).spreadC()).isZero();
    }

    /** Seven days of 22 °C, and one of 18 twelve weeks ago: it counts as 1.5 °C off, a day earlier not at all. */
    @Test
    void daysOverTwelveWeeksAgoDoNotCount() {
        assertThat(of(oneDayOff(84)).spreadC()).isCloseTo(Math.sqrt(2.25 / 7), within(1e-9));
        assertThat(of(oneDayOff(85)).spreadC()).isZero();
    }

    private static HourlySeries oneDayOff(int daysAgo) {
        HourlySeries series = days(22, 22, 22, 22, 22, 22, 22);
        for (int hour = 0; hour < 24; hour++) {
            series.put(TODAY - daysAgo * 24L + hour, HourlySeries.microC(18), 1);
        }
        return series;
    }

    /**
     * By hand for persistence τ = 10 days and a pattern of 7: V(7) = 20/49 · (7 − 10 · 0.503415) = 0.802389. For a lead of
     * none 1 + V(7) − 2 · 10/7 · 0.503415 = 0.364061; for 400 days V = 20/160000 · 390 = 0.04875 and C = 100/2800 · 0.503415 =
     * 0.017979, together 0.815181.
     */
    @Test
    void theErrorIsThatOfAnHourAtFirstAndOfThePatternInTheEnd() {
        var unit = of(days(21, 23, 21, 23, 21, 23, 21, 23));

        assertThat(unit.ofMeanOver(0) / unit.spreadC()).isCloseTo(Math.sqrt(0.364061), within(1e-3));
        assertThat(unit.ofMeanOver(400) / unit.spreadC()).isCloseTo(Math.sqrt(0.815181), within(1e-4));
        assertThat(unit.ofMeanOver(4_000)).isEqualTo(unit.ofMeanOver(400));
        assertThat(unit.ofMeanOver(2.1))
                .as("straight between quarters of a day")
                .isCloseTo(0.6 * unit.ofMeanOver(2) + 0.4 * unit.ofMeanOver(2.25), within(1e-12));
    }
}
