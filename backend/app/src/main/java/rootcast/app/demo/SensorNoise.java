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

    /** Errors beyond it would look like a fault of the probe, which is simulated only on purpose. */
    private static final double FARTHEST_DEVIATIONS = 3;

    double shownC(String house, String quantity, Instant at, double trueC) {
        String probe = house + ' ' + quantity;
        double offsetC = OFFSET_C * gaussian(SeededDraw.of(seed, "offset " + probe, 0));
        double errorC = ERROR_C * gaussian(SeededDraw.of(seed, "error " + probe, at.getEpochSecond()));
        return Math.round((trueC + offsetC + errorC) * 10) / 10.0;
    }

    private static double gaussian(SplittableRandom random) {
        double drawn = random.nextGaussian();
        while (Math.abs(drawn) > FARTHEST_DEVIATIONS) {
            drawn = random.nextGaussian();
        }
        return drawn;
    }
}
