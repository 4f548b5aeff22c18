package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MoistAirTest {

    /** FAO-56 Annex 2, table 2.3: 15, 18, 24.5, 25 °C seen quoted (V2); the others computed and remembered (C, M). */
    @ParameterizedTest
    @CsvSource({
        "15, 1.705",
        "18, 2.064",
        "24.5, 3.075",
        "25, 3.168",
        "20, 2.338",
        "22, 2.644",
        "28, 3.780",
        "30, 4.243",
    })
    void saturationPressureOfFao56(double airC, double kpa) {
        assertThat(MoistAir.saturationKpa(airC)).isCloseTo(kpa, within(0.001));
    }

    /** ASHRAE Fundamentals ch. 1 (V2); forms of Magnus differ from it by up to 0.3 %. */
    @ParameterizedTest
    @CsvSource({"5, 0.8726", "25, 3.1697", "50, 12.3513"})
    void saturationPressureOfAshrae(double airC, double kpa) {
        assertThat(MoistAir.saturationKpa(airC)).isCloseTo(kpa, Percentage.withPercentage(0.3));
    }

    /** FAO-56 examples 3, 4 and 5 (V2). */
    @Test
    void workedExamplesOfFao56() {
        assertThat((MoistAir.saturationKpa(24.5) + MoistAir.saturationKpa(15)) / 2)
                .isCloseTo(2.39, within(0.005));
        assertThat(MoistAir.vapourByPsychrometerKpa(25.6, 19.5, 87.9)).isCloseTo(1.91, within(0.005));
        assertThat((MoistAir.vapourKpa(18, 82) + MoistAir.vapourKpa(25, 54)) / 2)
                .isCloseTo(1.70, within(0.005));
    }

    /** 22 °C and 78 %: seen (V); the others computed (C). */
    @ParameterizedTest
    @CsvSource({"22, 78, 17.98", "25, 50, 13.86", "20, 60, 12.00", "22, 80, 18.39", "24, 90, 22.26", "30, 70, 23.92"})
    void dewPoint(double airC, double humidityPercent, double dewPointC) {
        assertThat(MoistAir.dewPointC(airC, humidityPercent)).isCloseTo(dewPointC, within(0.05));
    }

    /**
     * Columns: °C, %, saturation kPa, deficit kPa, dew point °C by npm psychrolib 1.1.1 (ASHRAE 2017), an outside oracle:
     * {@code GetSatVapPres(t)}, that less {@code GetVapPresFromRelHum(t, h / 100)}, and {@code GetTDewPointFromRelHum(t, h
     * / 100)} after {@code SetUnitSystem(SI)}.
     */
    @ParameterizedTest
    @CsvSource({
        "18, 85, 2.0643, 0.3096, 15.442",
        "20, 60, 2.3388, 0.9355, 12.007",
        "21, 90, 2.4877, 0.2488, 19.297",
        "22, 78, 2.6448, 0.5818, 17.989",
        "25, 50, 3.1692, 1.5846, 13.864",
        "26.7, 80, 3.5050, 0.7010, 22.962",
        "30, 70, 4.2460, 1.2738, 23.928",
    })
    void agreesWithAnotherLibrary(
            double airC, double humidityPercent, double saturationKpa, double deficitKpa, double dewPointC) {
        assertThat(MoistAir.saturationKpa(airC)).isCloseTo(saturationKpa, Percentage.withPercentage(0.1));
        assertThat(MoistAir.deficitKpa(airC, humidityPercent)).isCloseTo(deficitKpa, Percentage.withPercentage(0.2));
        assertThat(MoistAir.dewPointC(airC, humidityPercent)).isCloseTo(dewPointC, within(0.05));
    }

    @Test
    void saturatedAirHasNoDeficitAndItsOwnDewPoint() {
        assertThat(MoistAir.deficitKpa(21, 100)).isZero();
        assertThat(MoistAir.dewPointC(21, 100)).isCloseTo(21, within(1e-9));
        assertThat(MoistAir.deficitKpa(25, 50)).isCloseTo(3.168 / 2, within(0.001));
    }

    @ParameterizedTest
    @ValueSource(doubles = {0, -1, 100.1, Double.NaN})
    void refusesAHumidityThatCannotBe(double humidityPercent) {
        assertThatIllegalArgumentException().isThrownBy(() -> MoistAir.dewPointC(20, humidityPercent));
    }
}
