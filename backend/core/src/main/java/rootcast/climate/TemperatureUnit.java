package rootcast.climate;

import java.util.Arrays;
import java.util.Optional;

/**
 * A unit that readings may come in, by its UCUM code.
 *
 * <p>Source: The Unified Code for Units of Measure, table of customary units: {@code [degF]} is °C · 9/5 + 32.
 */
public enum TemperatureUnit {
    CELSIUS("Cel") {
        @Override
        public double toCelsius(double value) {
            return value;
        }
    },
    FAHRENHEIT("[degF]") {
        @Override
        public double toCelsius(double value) {
            return (value - 32) / 1.8;
        }
    };

    private final String ucum;

    TemperatureUnit(String ucum) {
        this.ucum = ucum;
    }

    public abstract double toCelsius(double value);

    public String ucum() {
        return ucum;
    }

    /** UCUM codes are case-sensitive. */
    public static Optional<TemperatureUnit> ofUcum(String code) {
        return Arrays.stream(values()).filter(unit -> unit.ucum.equals(code)).findFirst();
    }
}
