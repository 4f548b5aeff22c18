package rootcast.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class BetaTest {

    @Test
    void wholePowersAreTheTextbookMoments() {
        var beta = new Beta(18, 2);

        assertThat(beta.powerMoment(0)).isEqualTo(1);
        assertThat(beta.powerMoment(1)).isCloseTo(0.9, within(1e-14));
        assertThat(beta.powerMoment(2)).isCloseTo(18.0 * 19 / (20 * 21), within(1e-14));
        assertThat(beta.variance()).isCloseTo(18.0 * 19 / (20 * 21) - 0.81, within(1e-14));
    }

    /** By summing p^u · p^(a−1) (1−p)^(b−1) over a million slices. */
    @ParameterizedTest
    @CsvSource({"18, 2, 0.5", "95, 5, 0.25", "3, 4, 1.7"})
    void brokenPowersAgreeWithSlicing(double alpha, double beta, double power) {
        double moment = 0;
        double total = 0;
        int slices = 1_000_000;
        for (int i = 0; i < slices; i++) {
            double p = (i + 0.5) / slices;
            double density = Math.pow(p, alpha - 1) * Math.pow(1 - p, beta - 1);
            total += density;
            moment += density * Math.pow(p, power);
        }

        assertThat(new Beta(alpha, beta).powerMoment(power)).isCloseTo(moment / total, within(1e-9));
    }
}
