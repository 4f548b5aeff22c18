package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.crop.Cardinals;
import rootcast.crop.Cardinals.Form;

class DevelopmentRateTest {

    private static final DevelopmentRate MIN_0 = new DevelopmentRate(new Cardinals(Form.BETA, 0, 26, 36, 22));
    private static final DevelopmentRate MIN_5 = new DevelopmentRate(new Cardinals(Form.BETA, 5, 26, 36, 22));
    private static final DevelopmentRate LINEAR = new DevelopmentRate(new Cardinals(Form.LINEAR, 10, 25, 34, 20));

    /** facts-science.md §1 (C): Yan and Hunt 1999 with Tmax 36, Topt 26, Rmax 1, evaluated there. */
    @ParameterizedTest
    @CsvSource({
        "10, 0.2168",
        "15, 0.5025",
        "18, 0.6919",
        "20, 0.8088",
        "22, 0.9068",
        "24, 0.9745",
        "26, 1",
        "28, 0.9700",
        "30, 0.8704",
        "32, 0.6863",
    })
    void yanAndHunt(double celsius, double response) {
        assertThat(MIN_0.response(celsius)).isCloseTo(response, within(0.00005));
    }

    /** The same values serve another minimum once all temperatures move with it, as the equation says. */
    @ParameterizedTest
    @CsvSource({"15, 0.2168", "20, 0.5025", "25, 0.8088", "31, 1", "35, 0.8704"})
    void aMinimumOtherThanZeroMovesTheCurve(double celsius, double response) {
        var moved = new DevelopmentRate(new Cardinals(Form.BETA, 5, 31, 41, 25));

        assertThat(moved.response(celsius)).isCloseTo(response, within(0.00005));
    }

    /** facts-science.md §1 (C, equation V2): Wang and Engel with 5, 26, 36 °C; guards the truth other tests use. */
    @ParameterizedTest
    @CsvSource({
        "10, 0.1495",
        "15, 0.4627",
        "18, 0.6704",
        "20, 0.7970",
        "22, 0.9017",
        "24, 0.9734",
        "28, 0.9691",
        "30, 0.8676",
        "32, 0.6819",
    })
    void wangAndEngel(double celsius, double response) {
        assertThat(new WangEngel(5, 26, 36).response(celsius)).isCloseTo(response, within(0.00005));
    }

    @ParameterizedTest
    @ValueSource(doubles = {-40, 4.999, 5, 36, 36.001, 60})
    void nothingDevelopsAtOrOutsideMinimumAndMaximum(double celsius) {
        assertThat(MIN_5.perDay(celsius)).isZero();
    }

    /** Straight lines, by hand: (T − 10) / 15 to 25 °C, then level; the reference 20 °C runs at 2/3. */
    @ParameterizedTest
    @CsvSource({"10, 0", "13, 0.3", "20, 1", "25, 1.5", "33.99, 1.5", "34, 0", "5, 0"})
    void linearFormInReferenceDaysPerDay(double celsius, double perDay) {
        assertThat(LINEAR.perDay(celsius)).isCloseTo(perDay, within(1e-12));
    }

    /** By hand from the published values: f(28)/f(22) = 0.9700/0.9068. */
    @Test
    void aDayAtTheReferenceTemperatureIsOneReferenceDay() {
        assertThat(MIN_0.perDay(22)).isEqualTo(1);
        assertThat(MIN_0.perDay(28)).isCloseTo(0.9700 / 0.9068, within(0.0002));
    }

    @Test
    void refusesAReferenceAtWhichHardlyAnythingDevelops() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new DevelopmentRate(new Cardinals(Form.BETA, 5, 26, 36, 5.001)))
                .withMessageContaining("5.001");
    }
}
