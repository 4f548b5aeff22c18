package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import rootcast.crop.Cardinals;

/** Around a minimum of 7 °C and an optimum of 24; logarithms by hand. */
class CardinalGridTest {

    private static final CardinalGrid GRID = new CardinalGrid(new Cardinals(Cardinals.Form.LINEAR, 7, 24, 36, 22));
    private static final int OPTIMUM = 12;
    private static final int MINIMUM = 6;

    @Test
    void reachesSixDegreesToEachSide() {
        assertThat(GRID.optimaC).hasSize(25).startsWith(18, 18.5).endsWith(30);
        assertThat(GRID.minimaC).hasSize(13).startsWith(1, 2).endsWith(13);
        assertThat(GRID.optimaC[OPTIMUM]).isEqualTo(24);
        assertThat(GRID.minimaC[MINIMUM]).isEqualTo(7);
    }

    /** 90 % of a normal lie within 1.645 standard deviations: half of 4 °C of the optimum, half of 6 of the minimum. */
    @Test
    void atTheEndsOfTheWidestRangeItIsAsUnlikelyAsAtOneInTwenty() {
        double atEnd = -1.6448536 * 1.6448536 / 2;

        assertThat(GRID.logPrior(OPTIMUM, MINIMUM)).isZero();
        assertThat(GRID.logPrior(OPTIMUM + 4, MINIMUM)).isCloseTo(atEnd, within(1e-9));
        assertThat(GRID.logPrior(OPTIMUM - 4, MINIMUM)).isCloseTo(atEnd, within(1e-9));
        assertThat(GRID.logPrior(OPTIMUM, MINIMUM + 3)).isCloseTo(atEnd, within(1e-9));
        assertThat(GRID.logPrior(OPTIMUM + 4, MINIMUM - 3)).isCloseTo(2 * atEnd, within(1e-9));
    }

    @Test
    void theThreeTemperaturesAndTheReferenceLieADegreeApart() {
        CardinalGrid close = new CardinalGrid(new Cardinals(Cardinals.Form.LINEAR, 15, 18, 20, 17));

        assertThat(close.at(OPTIMUM, MINIMUM)).isPresent();
        assertThat(close.at(OPTIMUM, MINIMUM + 1)).as("16 and 17").isPresent();
        assertThat(close.at(OPTIMUM, MINIMUM + 2)).as("17 is the reference").isEmpty();
        assertThat(close.at(OPTIMUM + 2, MINIMUM)).as("19 and 20").isPresent();
        assertThat(close.at(OPTIMUM + 3, MINIMUM)).as("19.5 and 20").isEmpty();
        assertThat(close.at(OPTIMUM - 4, MINIMUM)).as("16 and 15").isPresent();
        assertThat(close.at(OPTIMUM - 5, MINIMUM)).as("15.5 and 15").isEmpty();
        assertThat(close.at(OPTIMUM + 1, MINIMUM - 2)).contains(new Cardinals(Cardinals.Form.LINEAR, 13, 18.5, 20, 17));
    }

    /**
     * Minima of 4 and 10 °C, as likely as each other. At 15 and 20 °C the logarithms of the rates lie ln(11/16)/2 = −0.187347 and
     * ln(5/10)/2 = −0.346574 from their mean: half their difference, squared, is 0.006338.
     */
    @Test
    void theRatesDifferAsTheCardinalsThatAreLeftDo() {
        CardinalGrid.LogLikelihood two = (optimum, minimum) ->
                optimum == OPTIMUM && Math.abs(minimum - MINIMUM) == 3 ? 0 : Double.NEGATIVE_INFINITY;

        assertThat(GRID.rateVariance(two, new double[] {15, 20})).isCloseTo(0.006338, within(1e-6));
        assertThat(GRID.rateVariance(two, new double[] {})).isZero();
        assertThat(GRID.rateVariance(two, new double[] {3, 20}))
                .as("below every minimum nothing develops")
                .isZero();
    }
}
