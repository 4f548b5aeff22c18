package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rootcast.climate.SetpointPlan.Change;

/** Temperatures by hand. The day that is measured runs from 20.0 °C at midnight to 22.3 at 23:00, a tenth an hour. */
class DailyPatternTest {

    private static final Instant NOW = Instant.parse("2026-03-20T00:00:00Z");
    private static final long NEXT = HourlySeries.hourOf(NOW);

    private final HourlySeries series = new HourlySeries();

    private void hour(long hour, double celsius) {
        series.put(hour, HourlySeries.microC(celsius), 1);
    }

    private void yesterday() {
        for (int hour = 0; hour < 24; hour++) {
            hour(NEXT - 24 + hour, 20 + hour / 10.0);
        }
    }

    private FilledSeries set(@Nullable Double before, long fromHour, @Nullable Double after) {
        return new FilledSeries(
                series, NOW, SetpointPlan.of(before).with(new Change(HourlySeries.startOf(fromHour), after)));
    }

    @Test
    void hoursBeforeAChangeCountAsIfTodaysSetpointHadHeld() {
        for (int hour = 0; hour < 24; hour++) {
            hour(NEXT - 24 + hour, hour < 12 ? 18 : 22);
        }

        FilledSeries raised = set(18.0, NEXT - 12, 22.0);

        assertThat(raised.celsius(NEXT + 5, 77)).isCloseTo(22, within(1e-9));
        assertThat(raised.celsius(NEXT + 15, 77)).isCloseTo(22, within(1e-9));
    }

    @Test
    void hoursToComeRiseWithTheirSetpoint() {
        yesterday();

        FilledSeries raised = set(20.0, NEXT + 10, 23.0);

        assertThat(raised.celsius(NEXT + 9, 77)).isCloseTo(20.9, within(1e-9));
        assertThat(raised.celsius(NEXT + 10, 77)).isCloseTo(21.0 + 3, within(1e-9));
        assertThat(raised.celsius(NEXT + 26, 77)).isCloseTo(20.2 + 3, within(1e-9));
        assertThat(raised.setpointChangesAfter(NEXT)).containsExactly(NEXT + 10);
        assertThat(raised.setpointChangesAfter(NEXT + 10)).isEmpty();
    }

    /** The day's mean is 20 + 11.5 / 10 = 21.15 °C: at 10:00 it lies 0.15 below it. */
    @Test
    void whereNothingWasSetThePlannedTemperatureBecomesTheMeanOfTheDay() {
        yesterday();

        FilledSeries planned = set(null, NEXT + 10, 25.0);

        assertThat(planned.celsius(NEXT + 9, 77)).isCloseTo(20.9, within(1e-9));
        assertThat(planned.celsius(NEXT + 10, 77)).isCloseTo(25 - 0.15, within(1e-9));
        assertThat(set(null, NEXT + 1, 25.0).celsius(NEXT + 2, 77))
                .as("20.2 lies 0.95 below the mean")
                .isCloseTo(25 - 0.95, within(1e-9));
    }

    @Test
    void whereTheHeatIsToGoOffTheDayStaysAsItIs() {
        yesterday();

        FilledSeries off = set(20.0, NEXT + 10, null);

        assertThat(off.celsius(NEXT + 12, 77)).isCloseTo(21.2, within(1e-9));
    }

    @Test
    void aDayCountsFromItsFirstReadingOn() {
        for (int day = 1; day <= 7; day++) {
            hour(NEXT - day * 24L + 3, 20);
        }
        hour(NEXT - 8 * 24L + 5, 30);

        assertThat(set(null, NEXT + 1, null).celsius(NEXT + 5, 77)).isCloseTo(20, within(1e-9));
    }

    @Test
    void aDayOverFourWeeksAgoSaysNothing() {
        hour(NEXT - 28 * 24L, 15);
        assertThat(new FilledSeries(series, NOW, SetpointPlan.none()).celsius(NEXT + 5, 77))
                .isCloseTo(15, within(1e-9));

        series.put(NEXT - 28 * 24L, 0, 0);
        hour(NEXT - 28 * 24L - 1, 15);
        assertThat(new FilledSeries(series, NOW, SetpointPlan.none()).celsius(NEXT + 5, 77))
                .isEqualTo(77);
    }
}
