package rootcast.climate;

import java.util.Arrays;
import java.util.Optional;

/**
 * What gives the light, and with it how many lux one µmol/m²/s of photons make. Lux follow the eye, plants count photons.
 *
 * <p>Source: Thimijan and Heins (1983), HortScience 18:818-822.
 */
public enum LightSource {
    SUN("sun", 54),
    HIGH_PRESSURE_SODIUM("high-pressure-sodium", 82),
    METAL_HALIDE("metal-halide", 71),
    COOL_WHITE("cool-white-fluorescent", 74);

    /** The international square foot, exact. */
    static final double SQUARE_FOOT_M2 = 0.09290304;

    private final String wireName;
    private final double luxPerPhotonFlux;

    LightSource(String wireName, double luxPerPhotonFlux) {
        this.wireName = wireName;
        this.luxPerPhotonFlux = luxPerPhotonFlux;
    }

    /** Photon flux density of so many lux, µmol/m²/s. */
    public double photonFlux(double lux) {
        return lux / luxPerPhotonFlux;
    }

    /** Foot-candles of so many µmol/m²/s; an estimate to two figures at best. */
    public double footCandles(double photonFlux) {
        return photonFlux * luxPerPhotonFlux * SQUARE_FOOT_M2;
    }

    public String wireName() {
        return wireName;
    }

    public static Optional<LightSource> ofWireName(String wireName) {
        return Arrays.stream(values())
                .filter(source -> source.wireName.equals(wireName))
                .findFirst();
    }
}
