package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class WorldTest {

    private static final int WORLDS = 40_000;

    /** Four standard errors of a share of a quarter. */
    private static final double ERROR = 4 * Math.sqrt(0.25 * 0.75 / WORLDS);

    /**
     * Two batches are both on the faster side as often as two normal variables with the correlation of what they share are both positive: ¼ + arcsin ρ / 2π
     * (W. F. Sheppard 1899, Phil. Trans. R. Soc. A 192:101-167; from memory).
     */
    @ParameterizedTest(name = "{0}: correlation {5}")
    @CsvSource({
        "one house whose weather is all,      south, mint, 1.0, 0.0, 1.0",
        "one house and half of it weather,     south, sage, 0.5, 0.0, 0.5",
        "one crop whose days are half of it,  north, mint, 0.0, 0.5, 0.5",
        "one house and one crop,              south, mint, 0.3, 0.4, 0.7",
        "neither house nor crop in common,    north, sage, 0.5, 0.5, 0.0",
        "nothing shared,                      south, mint, 0.0, 0.0, 0.0",
    })
    void batchesAreFastTogetherAsFarAsTheyShareWhatIsUncertain(
            String what, String otherHouse, String otherCrop, double weather, double days, double correlation) {
        int both = 0;
        for (int number = 0; number < WORLDS; number++) {
            World world = new World(number);
            var one = world.of("B1", "mint", new SharedDoubt("south", weather, days));
            var other = world.of("B2", otherCrop, new SharedDoubt(otherHouse, weather, days));
            both += one.faster() > 0.5 && other.faster() > 0.5 ? 1 : 0;
        }

        assertThat((double) both / WORLDS)
                .as(what)
                .isCloseTo(0.25 + Math.asin(correlation) / (2 * Math.PI), within(ERROR));
    }

    /** A uniform variable has the mean ½ and the variance 1/12, and each tenth of it a tenth of the draws. */
    @Test
    void everyPlaceIsAsLikely() {
        int[] tenths = new int[10];
        double sum = 0;
        double squares = 0;
        for (int number = 0; number < WORLDS; number++) {
            var place = new World(number).of("B1", "mint", new SharedDoubt("south", 0.3, 0.2));
            tenths[(int) (10 * place.faster())]++;
            sum += place.alive();
            squares += place.alive() * place.alive();
        }

        for (int tenth : tenths) {
            assertThat((double) tenth / WORLDS).isCloseTo(0.1, within(4 * Math.sqrt(0.09 / WORLDS)));
        }
        double mean = sum / WORLDS;
        assertThat(mean).isCloseTo(0.5, within(4 * Math.sqrt(1.0 / 12 / WORLDS)));
        assertThat(squares / WORLDS - mean * mean).isCloseTo(1.0 / 12, within(0.002));
    }

    @Test
    void aWorldIsTheSameWhoeverAsks() {
        SharedDoubt shared = new SharedDoubt("south", 0.3, 0.2);

        assertThat(new World(7).of("B1", "mint", shared)).isEqualTo(new World(7).of("B1", "mint", shared));
        assertThat(new World(7).of("B1", "mint", shared)).isNotEqualTo(new World(8).of("B1", "mint", shared));
    }
}
