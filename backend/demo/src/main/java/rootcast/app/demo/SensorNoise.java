package rootcast.app.demo;

import java.time.Instant;
import java.util.SplittableRandom;

/**
 * What a probe shows of a true temperature: an offset of its own that never changes, an error that is new at every
 * reading, and one decimal.
 *
 * @param seed same seed, same readings
 */
record SensorNoise(long seed) {

    /** Standard deviations, °C; a probe of the usual kind (common practice, no source). */
    private static final double OFFSET_C = 0.1;

    private static final double ERROR_C = 0.08;

    private static final double ERROR_PERCENT = 0.6;
    private static final double ERROR_LIGHT_SHARE = 0.02;

    /** Errors beyond it would look like a fault of the probe, which is simulated only on purpose. */
    private static final double FARTHEST_DEVIATIONS = 3;

    double shownC(String house, String quantity, Instant at, double trueC) {
        String probe = house + ' ' + quantity;
        double offsetC = OFFSET_C * gaussian(SeededDraw.of(seed, "offset " + probe, 0));
        double errorC = ERROR_C * gaussian(SeededDraw.of(seed, "error " + probe, at.getEpochSecond()));
        return Math.round((trueC + offsetC + errorC) * 10) / 10.0;
    }

    /** Of a probe for humidity, 0 to 100 %. */
    double shownPercent(String house, Instant at, double truePercent) {
        double errorPercent = ERROR_PERCENT * gaussian(SeededDraw.of(seed, "error RH " + house, at.getEpochSecond()));
        return Math.min(100, Math.max(0, Math.round((truePercent + errorPercent) * 10) / 10.0));
    }

    /** Of a probe for light, whole µmol/m²/s; darkness is shown as 0. */
    double shownPhotonFlux(String house, Instant at, double truePhotonFlux) {
        double error = ERROR_LIGHT_SHARE * gaussian(SeededDraw.of(seed, "error light " + house, at.getEpochSecond()));
        return Math.max(0, Math.round(truePhotonFlux * (1 + error)));
    }

    private static double gaussian(SplittableRandom random) {
        double drawn = random.nextGaussian();
        while (Math.abs(drawn) > FARTHEST_DEVIATIONS) {
            drawn = random.nextGaussian();
        }
        return drawn;
    }
}
