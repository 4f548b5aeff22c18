package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DailyLightTest {

    private static final long MIDNIGHT = HourlySeries.hourOf(java.time.Instant.parse("2026-03-01T00:00:00Z"));

    /** Extension tables (V): 500 µmol for 12 hours make 21.6 mol, 1 µmol around the clock 0.0864. */
    @ParameterizedTest
    @CsvSource({"500, 12, 21.6", "1, 24, 0.0864"})
    void aDayOfSteadyLight(double photonFlux, int hours, double moles) {
        var light = new HourlySeries();
        for (int hour = 0; hour < 24; hour++) {
            light.add(HourlySeries.startOf(MIDNIGHT + hour), hour < hours ? photonFlux : 0);
        }

        var day = DailyLight.of(light, MIDNIGHT, MIDNIGHT + 24);

        assertThat(day.moles()).isCloseTo(moles, within(1e-9));
        assertThat(day.bridgedHours()).isZero();
    }

    /** By hand: 100, 200 and 300 µmol for an hour each are 2.16 mol. */
    @Test
    void aShortGapIsBridgedAndSaid() {
        var light = new HourlySeries();
        light.add(HourlySeries.startOf(MIDNIGHT), 100);
        light.add(HourlySeries.startOf(MIDNIGHT + 2), 300);

        var day = DailyLight.of(light, MIDNIGHT, MIDNIGHT + 3);

        assertThat(day.moles()).isCloseTo(2.16, within(1e-9));
        assertThat(day.bridgedHours()).isEqualTo(1);
    }

    @Test
    void aDayWithALongGapHasNoFigure() {
        var light = new HourlySeries();
        light.add(HourlySeries.startOf(MIDNIGHT), 100);
        light.add(HourlySeries.startOf(MIDNIGHT + 5), 100);

        assertThat(DailyLight.of(light, MIDNIGHT, MIDNIGHT + 6).moles()).isNaN();
        assertThat(DailyLight.of(light, MIDNIGHT + 5, MIDNIGHT + 7).moles()).isNaN();
    }

    /** By hand: 100, 200, 300, 400 and 500 µmol for an hour each are 5.4 mol. */
    @Test
    void threeMissingHoursAreTheLongestGapThatIsBridged() {
        var light = new HourlySeries();
        light.add(HourlySeries.startOf(MIDNIGHT), 100);
        light.add(HourlySeries.startOf(MIDNIGHT + 4), 500);

        var day = DailyLight.of(light, MIDNIGHT, MIDNIGHT + 5);

        assertThat(day.moles()).isCloseTo(5.4, within(1e-9));
        assertThat(day.bridgedHours()).isEqualTo(3);
        assertThat(DailyLight.of(light, MIDNIGHT + 1, MIDNIGHT + 2).moles())
                .as("200 µmol for an hour")
                .isCloseTo(0.72, within(1e-9));
        assertThat(DailyLight.of(light, MIDNIGHT + 3, MIDNIGHT + 4).moles())
                .as("400 µmol for an hour")
                .isCloseTo(1.44, within(1e-9));
    }

    @Test
    void aGapThatIsOpenAtOneEndIsNotBridged() {
        var light = new HourlySeries();
        light.add(HourlySeries.startOf(MIDNIGHT + 1), 100);

        assertThat(DailyLight.of(light, MIDNIGHT, MIDNIGHT + 2).moles()).isNaN();
        assertThat(DailyLight.of(light, MIDNIGHT + 1, MIDNIGHT + 3).moles()).isNaN();
        assertThat(DailyLight.of(light, MIDNIGHT, MIDNIGHT + 3).bridgedHours()).isEqualTo(2);
    }
}
