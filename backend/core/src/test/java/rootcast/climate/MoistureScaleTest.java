package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Levels by hand. */
class MoistureScaleTest {

    private static final MoistureScale WATER_PERCENT = new MoistureScale(List.of(12.0, 20.0, 30.0, 45.0, 60.0));
    private static final MoistureScale TENSION_KPA = new MoistureScale(List.of(30.0, 15.0, 8.0, 4.0, 1.0));

    @ParameterizedTest
    @CsvSource({"12, 1", "16, 1.5", "20, 2", "25, 2.5", "37.5, 3.5", "60, 5", "0, 1", "99, 5"})
    void waterContentRisesWithTheLevel(double percent, double level) {
        assertThat(WATER_PERCENT.level(percent)).isCloseTo(level, within(1e-12));
    }

    @ParameterizedTest
    @CsvSource({"30, 1", "22.5, 1.5", "8, 3", "2.5, 4.5", "1, 5", "80, 1", "0, 5"})
    void tensionFallsAsTheLevelRises(double kilopascal, double level) {
        assertThat(TENSION_KPA.level(kilopascal)).isCloseTo(level, within(1e-12));
    }

    @Test
    void noNumberIsNoLevel() {
        assertThat(WATER_PERCENT.level(Double.NaN)).isNaN();
    }

    @Test
    void fiveNumbersThatGoOneWayAreAScale() {
        for (List<Double> none : List.of(
                List.of(1.0, 2.0, 3.0, 4.0),
                List.of(1.0, 2.0, 2.0, 3.0, 4.0),
                List.of(1.0, 3.0, 2.0, 4.0, 5.0),
                List.of(1.0, 2.0, Double.NaN, 4.0, 5.0))) {
            assertThatIllegalArgumentException().isThrownBy(() -> new MoistureScale(none));
        }
    }

    @Test
    void aProbeThatShowsNoLevelNeedsAScaleAndNoOtherSensorHasOne() {
        assertThatIllegalArgumentException().isThrownBy(() -> probe(ReadingUnit.KILOPASCAL, null));
        assertThatIllegalArgumentException().isThrownBy(() -> probe(ReadingUnit.LEVEL, TENSION_KPA));
        assertThat(probe(ReadingUnit.KILOPASCAL, TENSION_KPA).kept(13)).isCloseTo(2, within(1e-12));
        assertThat(probe(ReadingUnit.LEVEL, null).kept(1)).isEqualTo(3);
    }

    /** With an offset of 2. */
    private static Sensor probe(ReadingUnit unit, MoistureScale scale) {
        return new Sensor("P", "H", Quantity.MEDIUM_MOISTURE, unit, null, 2, LightSource.SUN, scale);
    }

    @Test
    void tensionFallsAllTheWayAndThatIsOneWay() {
        assertThat(MoistureScale.goesOneWay(List.of(30.0, 15.0, 8.0, 4.0, 1.0))).isTrue();
        assertThat(MoistureScale.goesOneWay(List.of(30.0, 15.0, 16.0, 4.0, 1.0)))
                .isFalse();
    }
}
