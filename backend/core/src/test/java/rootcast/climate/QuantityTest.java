package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Percentage;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {

    @ParameterizedTest
    @CsvSource({
        "medium-temperature, -10, true",
        "medium-temperature, 60, true",
        "medium-temperature, 60.01, false",
        "medium-temperature, -10.01, false",
        "medium-temperature, NaN, false",
        "air-temperature, -40, true",
        "air-temperature, 70, true",
        "air-temperature, 71, false",
        "air-temperature, Infinity, false",
        "relative-humidity, 100, true",
        "relative-humidity, 100.1, false",
        "light, 0, true",
        "light, 2500.1, false",
        "medium-moisture, 0.9, false",
        "medium-moisture, 5, true",
        "ec, 20.5, false",
    })
    void endsOfThePlausibleSpanArePlausible(String wireName, double celsius, boolean plausible) {
        Quantity quantity = Quantity.ofWireName(wireName).orElseThrow();

        assertThat(quantity.refusalOf(celsius).isEmpty()).isEqualTo(plausible);
    }

    @Test
    void aRefusalCarriesItsNumbers() {
        assertThat(Quantity.MEDIUM_TEMPERATURE.refusalOf(99))
                .contains(new Quantity.Implausible(Quantity.MEDIUM_TEMPERATURE, 99, -10, 60));
    }

    @Test
    void unknownNamesAreNoQuantityAndNoUnit() {
        assertThat(Quantity.ofWireName("humidity")).isEmpty();
        assertThat(ReadingUnit.ofUcum("cel")).isEmpty();
    }

    /** By hand from the definitions; 1 fc is 10.764 lx, and 54, 82, 71, 74 lx make 1 µmol (Thimijan and Heins 1983, V2). */
    @ParameterizedTest
    @CsvSource({
        "[degF], sun, 32, 0",
        "[degF], sun, 212, 100",
        "[degF], sun, -40, -40",
        "[degF], sun, 71.6, 22",
        "Cel, sun, 21.5, 21.5",
        "%, sun, 85, 85",
        "umol/m2/s, sun, 300, 300",
        "lx, sun, 54000, 1000",
        "lx, high-pressure-sodium, 8200, 100",
        "lx, metal-halide, 7100, 100",
        "lx, cool-white-fluorescent, 7400, 100",
        "mS/cm, sun, 1.2, 1.2",
        "dS/m, sun, 1.2, 1.2",
        "uS/cm, sun, 1200, 1.2",
        "{level}, sun, 4, 4",
        "1, sun, 4, 4",
    })
    void unitsByTheirUcumCode(String ucum, String light, double value, double kept) {
        assertThat(ReadingUnit.ofUcum(ucum)
                        .orElseThrow()
                        .kept(value, LightSource.ofWireName(light).orElseThrow()))
                .isCloseTo(kept, within(1e-12));
    }

    /** Extension tables: in the sun 2 000 µmol are 10 020 fc and 300 are 1 503 (V); they are good to two figures. */
    @ParameterizedTest
    @CsvSource({"10020, 2000", "1503, 300"})
    void footCandlesOfTheSun(double footCandles, double photonFlux) {
        double kept = ReadingUnit.FOOT_CANDLE.kept(footCandles, LightSource.SUN);

        assertThat(kept).isCloseTo(photonFlux, Percentage.withPercentage(0.5));
        assertThat(LightSource.SUN.footCandles(kept)).isCloseTo(footCandles, within(1e-9));
    }

    @Test
    void aUnitOfAnotherQuantityIsNoneOfItsOwn() {
        assertThat(ReadingUnit.of(Quantity.LIGHT))
                .containsExactly(ReadingUnit.PHOTON_FLUX, ReadingUnit.LUX, ReadingUnit.FOOT_CANDLE);
        assertThat(ReadingUnit.of(Quantity.RELATIVE_HUMIDITY)).containsExactly(ReadingUnit.PERCENT);
    }

    @Test
    void aRefusalSaysWhatIsPlausibleInItsUnit() {
        assertThat(Quantity.MEDIUM_TEMPERATURE.refusalOf(99))
                .hasToString("Optional[medium-temperature 99.0 is outside -10.0 to 60.0 (Cel)]");
    }
}
