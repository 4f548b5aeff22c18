package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Conversions by hand: °F to °C exactly, 54 and 82 lx to a µmol of sun and sodium (Thimijan and Heins 1983). */
class SensorTest {

    private static Sensor sensor(
            Quantity quantity, ReadingUnit unit, double offset, LightSource light, @Nullable MoistureScale scale) {
        return new Sensor("S1", "H1", quantity, unit, null, offset, light, scale);
    }

    @ParameterizedTest(name = "{3} {1} with {2} is {5}")
    @CsvSource({
        "MEDIUM_TEMPERATURE, CELSIUS,     0.5,  21.5, SUN,                 22",
        "AIR_TEMPERATURE,    FAHRENHEIT,  1.8,  70.2, SUN,                 22.2222222",
        "LIGHT,              LUX,         0,    5400, SUN,                 100",
        "LIGHT,              LUX,         0,    8200, HIGH_PRESSURE_SODIUM, 100",
        "LIGHT,              PHOTON_FLUX, -5,   105,  SUN,                 100",
        "EC,                 MICROSIEMENS, 100, 1900, SUN,                 2",
        "EC,                 DECISIEMENS, 0,    2,    SUN,                 2",
        "RELATIVE_HUMIDITY,  PERCENT,     -2,   90,   SUN,                 88",
        "MEDIUM_MOISTURE,    LEVEL,       0,    3.5,  SUN,                 3.5",
    })
    void theOffsetIsAddedInTheUnitThatItShows(
            Quantity quantity, ReadingUnit unit, double offset, double shown, LightSource light, double kept) {
        assertThat(sensor(quantity, unit, offset, light, null).kept(shown)).isCloseTo(kept, within(1e-6));
    }

    @Test
    void aMoistureProbeShowsALevelByItsScale() {
        var scale = new MoistureScale(List.of(10.0, 20.0, 30.0, 40.0, 50.0));
        Sensor probe = sensor(Quantity.MEDIUM_MOISTURE, ReadingUnit.PERCENT, 5, LightSource.SUN, scale);

        assertThat(probe.kept(30)).isEqualTo(3.5);
    }

    @Test
    void aUnitOfAnotherQuantityAndAScaleOutOfPlaceAreRefused() {
        var scale = new MoistureScale(List.of(10.0, 20.0, 30.0, 40.0, 50.0));

        assertThatIllegalArgumentException()
                .isThrownBy(() -> sensor(Quantity.LIGHT, ReadingUnit.PERCENT, 0, LightSource.SUN, null))
                .withMessage("light does not come in %");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> sensor(Quantity.MEDIUM_MOISTURE, ReadingUnit.MILLIVOLT, 0, LightSource.SUN, null))
                .withMessageContaining("scale");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> sensor(Quantity.MEDIUM_MOISTURE, ReadingUnit.LEVEL, 0, LightSource.SUN, scale))
                .withMessageContaining("scale");
    }

    @ParameterizedTest(name = "{0} at {1}: {2}")
    @CsvSource({
        "RELATIVE_HUMIDITY, 94.9, true",
        "RELATIVE_HUMIDITY, 95,   false",
        "LIGHT,             1,    false",
        "LIGHT,             1.1,  true",
        "MEDIUM_MOISTURE,   3,    false",
        "MEDIUM_TEMPERATURE, 22,  true",
    })
    void someQuantitiesMayStandStillByNature(Quantity quantity, double value, boolean odd) {
        assertThat(QualityLimits.of(quantity).mayBeFlat(value)).isEqualTo(odd);
    }

    @Test
    void wordsOutsideAreReadBack() {
        for (Quantity quantity : Quantity.values()) {
            assertThat(Quantity.ofWireName(quantity.wireName())).contains(quantity);
        }
        for (LightSource source : LightSource.values()) {
            assertThat(LightSource.ofWireName(source.wireName())).contains(source);
        }
        assertThat(LightSource.ofWireName("moon")).isEmpty();
        assertThat(ReadingUnit.ofUcum("[degF]")).contains(ReadingUnit.FAHRENHEIT);
        assertThat(LightSource.SUN.footCandles(100)).isCloseTo(501.7, within(0.1));
    }
}
