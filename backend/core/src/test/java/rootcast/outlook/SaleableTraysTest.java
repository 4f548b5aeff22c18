package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.outlook.GrowerFixture.TRAY_105;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.numerics.Beta;
import rootcast.numerics.BetaBinomial;
import rootcast.numerics.CountDistribution;

class SaleableTraysTest {

    /** Whole trays: by hand from floor(plants / 100). */
    @ParameterizedTest
    @CsvSource({"99, 0", "100, 1", "199, 1", "200, 2", "1050, 10"})
    void traysAreWholeTraysOfTheSaleCount(int plants, int trays) {
        var saleable = new SaleableTrays(CountDistribution.certain(plants), TRAY_105);

        assertThat(saleable.most()).isEqualTo(trays);
        assertThat(saleable.p50()).isEqualTo(trays);
        assertThat(saleable.mean()).isEqualTo(trays);
        assertThat(saleable.atLeast(trays)).isEqualTo(1);
        assertThat(saleable.atLeast(trays + 1)).isZero();
        assertThat(saleable.atLeast(-1)).isEqualTo(1);
        assertThat(saleable.atLeast(Integer.MAX_VALUE)).isZero();
    }

    @Test
    void trayTailsFallAndTheLowFigureIsTheSafeOne() {
        var trays = new SaleableTrays(new BetaBinomial(1_050, Beta.ofMean(0.86, 60)).counts(), TRAY_105);

        assertThat(trays.p10()).isLessThan(trays.p90());
        assertThat(trays.atLeast(trays.p10())).isGreaterThanOrEqualTo(0.9);
        assertThat(trays.atLeast(trays.p10() + 1)).isLessThan(0.9);
        for (int n = 1; n <= trays.most() + 1; n++) {
            assertThat(trays.atLeast(n)).isLessThanOrEqualTo(trays.atLeast(n - 1));
        }
    }
}
