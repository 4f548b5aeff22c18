package rootcast.climate;

import java.util.Arrays;
import java.util.List;
import java.util.Optional;

/**
 * A unit that readings may come in, by its UCUM code, and the way from it to the unit that its quantity is kept in.
 *
 * <p>Light in lux or foot-candles needs to know the lamp; see {@link LightSource}.
 *
 * <p>Source: The Unified Code for Units of Measure; {@code [degF]} is °C · 9/5 + 32 and {@code [sft_i]} is 0.09290304 m²,
 * both exact.
 */
public enum ReadingUnit {
    CELSIUS("Cel"),
    FAHRENHEIT("[degF]") {
        @Override
        double toKept(double value, LightSource light) {
            return (value - 32) / 1.8;
        }
    },
    PERCENT("%"),
    PHOTON_FLUX("umol/m2/s"),
    LUX("lx") {
        @Override
        double toKept(double value, LightSource light) {
            return light.photonFlux(value);
        }
    },
    FOOT_CANDLE("lm/[sft_i]") {
        @Override
        double toKept(double value, LightSource light) {
            return light.photonFlux(value / LightSource.SQUARE_FOOT_M2);
        }
    },
    MILLISIEMENS("mS/cm"),
    DECISIEMENS("dS/m"),
    MICROSIEMENS("uS/cm") {
        @Override
        double toKept(double value, LightSource light) {
            return value / 1_000;
        }
    },
    /** The moisture scale has no unit; UCUM lets a plain number carry a note in braces. */
    LEVEL("{level}"),
    PLAIN_NUMBER("1"),
    /** Of a moisture probe that reads tension; see {@link MoistureScale}. */
    KILOPASCAL("kPa"),
    /** Of a moisture probe that is not calibrated; see {@link MoistureScale}. */
    MILLIVOLT("mV");

    private final String ucum;

    ReadingUnit(String ucum) {
        this.ucum = ucum;
    }

    /** Of the quantity kept in a unit, all units that it may come in. */
    private static List<ReadingUnit> forms(ReadingUnit kept) {
        return switch (kept) {
            case CELSIUS -> List.of(CELSIUS, FAHRENHEIT);
            case PHOTON_FLUX -> List.of(PHOTON_FLUX, LUX, FOOT_CANDLE);
            case MILLISIEMENS -> List.of(MILLISIEMENS, DECISIEMENS, MICROSIEMENS);
            case LEVEL -> List.of(LEVEL, PLAIN_NUMBER);
            default -> List.of(kept);
        };
    }

    double toKept(double value, LightSource light) {
        return value;
    }

    /** Units that the quantity may come in, its own first. */
    public static List<ReadingUnit> of(Quantity quantity) {
        return forms(quantity.unit());
    }

    /** Units that the quantity may come in from a sensor that knows what they mean. */
    public static List<ReadingUnit> ofSensor(Quantity quantity) {
        return quantity == Quantity.MEDIUM_MOISTURE
                ? List.of(LEVEL, PLAIN_NUMBER, PERCENT, KILOPASCAL, MILLIVOLT)
                : of(quantity);
    }

    /** In the unit that {@link #of} its quantity is kept in; {@code light} matters to lux and foot-candles only. */
    public double kept(double value, LightSource light) {
        return toKept(value, light);
    }

    public String ucum() {
        return ucum;
    }

    /** UCUM codes are case-sensitive. */
    public static Optional<ReadingUnit> ofUcum(String code) {
        return Arrays.stream(values()).filter(unit -> unit.ucum.equals(code)).findFirst();
    }
}
