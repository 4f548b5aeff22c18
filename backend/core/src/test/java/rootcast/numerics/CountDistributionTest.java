package rootcast.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class CountDistributionTest {

    /** Weights 1, 2, 3, 4 on 3, 4, 5, 6: by hand. */
    private static final CountDistribution RISING = CountDistribution.ofWeights(3, new double[] {1, 2, 3, 4});

    @Test
    void tailsMeanAndVarianceAreThoseOfTheWeights() {
        assertThat(RISING.atLeast(2)).isEqualTo(1);
        assertThat(RISING.atLeast(5)).isCloseTo(0.7, within(1e-15));
        assertThat(RISING.atLeast(7)).isZero();
        assertThat(RISING.atMost(4)).isCloseTo(0.3, within(1e-15));
        assertThat(RISING.mean()).isCloseTo(5.0, within(1e-15));
        assertThat(RISING.variance()).isCloseTo(1.0, within(1e-15));
    }

    @Test
    void aQuantileIsTheLeastCountWithEnoughBelowIt() {
        assertThat(RISING.quantile(0)).isEqualTo(3);
        assertThat(RISING.quantile(0.09)).isEqualTo(3);
        assertThat(RISING.quantile(0.11)).isEqualTo(4);
        assertThat(RISING.quantile(0.61)).isEqualTo(6);
        assertThat(RISING.quantile(1)).isEqualTo(6);
    }

    @Test
    void takingSomeAwaySuppposesTheyWereThere() {
        var left = RISING.minus(5);

        assertThat(left.first()).isZero();
        assertThat(left.probability(0)).isCloseTo(3 / 7.0, within(1e-15));
        assertThat(left.probability(1)).isCloseTo(4 / 7.0, within(1e-15));
        assertThatIllegalArgumentException().isThrownBy(() -> RISING.minus(7)).withMessageContaining("at most 6");
    }

    @Test
    void logarithmsOfWeightsMayBeFarBelowZero() {
        var two = CountDistribution.ofLogWeights(0, new double[] {-5_000, -5_000 + Math.log(3)});

        assertThat(two.probability(1)).isCloseTo(0.75, within(1e-12));
    }

    @Test
    void refusesWeightsThatAreNone() {
        assertThatIllegalArgumentException().isThrownBy(() -> CountDistribution.ofWeights(0, new double[] {0, 0}));
        assertThatIllegalArgumentException().isThrownBy(() -> CountDistribution.ofWeights(0, new double[] {1, -1}));
        assertThatIllegalArgumentException().isThrownBy(() -> CountDistribution.certain(-1));
        assertThatIllegalArgumentException().isThrownBy(() -> RISING.quantile(1.1));
    }
}
