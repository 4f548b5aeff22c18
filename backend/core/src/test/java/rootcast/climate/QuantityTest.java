package rootcast.climate;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {

    @ParameterizedTest
    @CsvSource({
        "medium-temperature, -10, true", "medium-temperature, 60, true", "medium-temperature, 60.01, false",
        "medium-temperature, -10.01, false", "medium-temperature, NaN, false", "air-temperature, -40, true",
        "air-temperature, 70, true", "air-temperature, 71, false", "air-temperature, Infinity, false",
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
        assertThat(TemperatureUnit.ofUcum("cel")).isEmpty();
    }

    /** By hand from the definition: 32, 212 and −40 °F. */
    @ParameterizedTest
    @CsvSource({"[degF], 32, 0", "[degF], 212, 100", "[degF], -40, -40", "[degF], 71.6, 22", "Cel, 21.5, 21.5"})
    void unitsByTheirUcumCode(String ucum, double value, double celsius) {
        assertThat(TemperatureUnit.ofUcum(ucum).orElseThrow().toCelsius(value)).isCloseTo(celsius, within(1e-12));
    }
}
