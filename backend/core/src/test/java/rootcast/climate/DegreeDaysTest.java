package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static rootcast.climate.DegreeDays.Course.SINE;
import static rootcast.climate.DegreeDays.Course.TRIANGLE;
import static rootcast.climate.DegreeDays.CutOff.HORIZONTAL;
import static rootcast.climate.DegreeDays.CutOff.INTERMEDIATE;
import static rootcast.climate.DegreeDays.CutOff.VERTICAL;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class DegreeDaysTest {

    private static final double PRINTED = 0.0051;

    /** Zalom et al. 1983, Table 7, °F, lower 55, upper 90 (V2: seen quoted). */
    @ParameterizedTest(name = "{0} to {1} °F: triangle {2}, sine {3}")
    @CsvSource({
        "96, 110, 35, 35",
        "45, 54, 0, 0",
        "60, 80, 15, 15",
        "75, 88, 26.50, 26.50",
        "50, 82, 11.39, 11.85",
        "45, 70, 4.50, 5.31",
        "60, 100, 23.75, 22.82",
        "75, 95, 29.38, 28.91",
        "50, 101, 19.56, 18.95",
        "48, 95, 16.76, 16.96",
    })
    void zalomTable7(double min, double max, double triangle, double sine) {
        assertThat(new DegreeDays(TRIANGLE, HORIZONTAL, 55, 90).ofDay(min, max)).isCloseTo(triangle, within(PRINTED));
        assertThat(new DegreeDays(SINE, HORIZONTAL, 55, 90).ofDay(min, max)).isCloseTo(sine, within(PRINTED));
    }

    /** University of California IPM reference values, °F, lower 50, upper 70 (V: degree-day challenge, MIT). */
    @ParameterizedTest(name = "{0} to {1} °F: sine {2}, triangle {3}")
    @CsvSource({
        "38, 55, 1.19, 0.74",
        "36, 67, 5.71, 4.66",
        "33, 59, 2.34, 1.56",
        "52, 73, 12.01, 12.29",
        "71, 103, 20, 20",
        "44, 76, 10.00, 10.00",
    })
    void ipmHorizontal(double min, double max, double sine, double triangle) {
        assertThat(new DegreeDays(SINE, HORIZONTAL, 50, 70).ofDay(min, max)).isCloseTo(sine, within(PRINTED));
        assertThat(new DegreeDays(TRIANGLE, HORIZONTAL, 50, 70).ofDay(min, max)).isCloseTo(triangle, within(PRINTED));
    }

    /** The same source, other cut-offs. */
    @ParameterizedTest(name = "{0} to {1} °F: vertical {2}, intermediate {3}")
    @CsvSource({"52, 73, 7.08, 11.52", "44, 76, 4.30, 8.88", "71, 103, 0, 3"})
    void ipmOtherCutOffs(double min, double max, double vertical, double intermediate) {
        assertThat(new DegreeDays(SINE, VERTICAL, 50, 70).ofDay(min, max)).isCloseTo(vertical, within(PRINTED));
        assertThat(new DegreeDays(SINE, INTERMEDIATE, 50, 70).ofDay(min, max)).isCloseTo(intermediate, within(PRINTED));
    }

    /** McMaster and Wilhelm 1997, Table 1, base 0 °C (V2). */
    @ParameterizedTest(name = "{0}/{1} °C: clamp the mean {2}, clamp each {3}")
    @CsvSource({"8, -2, 3, 4", "5, -5, 0, 2.5", "10, -2, 4, 5", "20, 10, 15, 15"})
    void mcMasterWilhelmTable1(double max, double min, double clampedMean, double clampedExtremes) {
        assertThat(DegreeDays.ofClampedMean(min, max, 0)).isCloseTo(clampedMean, within(1e-12));
        assertThat(DegreeDays.ofClampedExtremes(min, max, 0)).isCloseTo(clampedExtremes, within(1e-12));
    }

    /** A triangle with vertical cut-off by slicing the straight line from min to max. */
    @Test
    void verticalTriangleAgreesWithSlicing() {
        double sum = 0;
        int slices = 1_000_000;
        for (int i = 0; i < slices; i++) {
            double at = 44 + (76 - 44) * (i + 0.5) / slices;
            sum += at > 50 && at < 70 ? at - 50 : 0;
        }

        assertThat(new DegreeDays(TRIANGLE, VERTICAL, 50, 70).ofDay(44, 76)).isCloseTo(sum / slices, within(1e-4));
    }

    @Test
    void aLevelDayCountsItsExcess() {
        assertThat(new DegreeDays(SINE, HORIZONTAL, 10, 30).ofDay(20, 20)).isEqualTo(10);
        assertThat(new DegreeDays(TRIANGLE, HORIZONTAL, 10, 30).ofDay(5, 5)).isZero();
    }

    @Test
    void refusesExtremesOrThresholdsThatAreTheWrongWayRound() {
        assertThatIllegalArgumentException().isThrownBy(() -> new DegreeDays(SINE, HORIZONTAL, 30, 10));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new DegreeDays(SINE, HORIZONTAL, 10, 30).ofDay(21, 20))
                .withMessageContaining("21");
        assertThatIllegalArgumentException().isThrownBy(() -> DegreeDays.ofClampedMean(2, 1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> DegreeDays.ofClampedExtremes(2, 1, 0));
    }

    /** By hand, base 10: of 25 and 5 the mean is 15, and 5 raised to 10 makes (10 + 25) / 2 = 17.5. */
    @Test
    void whatLiesAboveTheBaseCounts() {
        assertThat(DegreeDays.ofClampedMean(5, 25, 10)).isEqualTo(5);
        assertThat(DegreeDays.ofClampedExtremes(5, 25, 10)).isEqualTo(7.5);
        assertThat(DegreeDays.ofClampedMean(-2, 8, 10)).isZero();
        assertThat(DegreeDays.ofClampedExtremes(-2, 8, 10)).isZero();
    }

    /** At the upper threshold it is not above it yet: all 20 degrees count. */
    @Test
    void aLevelDayAtTheUpperThresholdIsNotAboveIt() {
        assertThat(new DegreeDays(SINE, VERTICAL, 50, 70).ofDay(70, 70)).isEqualTo(20);
        assertThat(new DegreeDays(TRIANGLE, VERTICAL, 50, 70).ofDay(71, 71)).isZero();
    }
}
