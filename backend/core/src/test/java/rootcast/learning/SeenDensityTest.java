package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rootcast.crop.Cardinals;
import rootcast.outlook.DevelopmentRate;

/** One stage seen at 2.0 with variances 0.01 of the moment and 0.03 of the batch: a normal with variance 0.04, by hand. */
class SeenDensityTest {

    private static final double SLOPE = -1.5;

    private static SeenDensity density(boolean... isSeen) {
        WarmDays.Rates[] rates = new WarmDays.Rates[3];
        Arrays.setAll(
                rates,
                k -> new WarmDays.Rates(new DevelopmentRate(new Cardinals(Cardinals.Form.LINEAR, 5, 24, 36, 22))));
        StageTimes.Given nothing = new StageTimes(
                        new BatchRecord("B", "V", "S", false, List.of(), List.of(), Map.of(), 0, 0), rates)
                .given(2);
        return SeenDensity.of(
                new StageTimes.Given(
                        isSeen,
                        new double[] {2, 3, 0},
                        Matrix3.of(0, 0.01),
                        SLOPE,
                        nothing.looks(),
                        nothing.ends(),
                        nothing.times()),
                Matrix3.of(0, 0.03));
    }

    /** 0.1 off is a square of 0.25: −ln(0.04)/2 − 0.25/2. */
    @Test
    void isNormalWhereBatchesUsuallyLie() {
        SeenDensity one = density(true, false, false);

        assertThat(one.log(new double[] {1.9, 9, 9})).isCloseTo(SLOPE - Math.log(0.04) / 2 - 0.125, within(1e-9));
        assertThat(one.weight(new double[] {1.9, 9, 9})).isEqualTo(1);
    }

    /** 0.8 off is a square of 16, 10.828 is usual: it counts as 10.828 · (1 + ln(16/10.828)) = 15.0558 with weight 0.67675. */
    @Test
    void anOddBatchCountsLess() {
        SeenDensity one = density(true, false, false);

        assertThat(one.log(new double[] {1.2, 9, 9}))
                .isCloseTo(SLOPE - Math.log(0.04) / 2 - 15.055829 / 2, within(1e-6));
        assertThat(one.weight(new double[] {1.2, 9, 9})).isCloseTo(0.67675, within(1e-9));
    }

    /** Squares 0.25 and 16 together: 13.816 is usual of two stages. */
    @Test
    void twoStagesHaveMoreRoom() {
        assertThat(density(true, true, false).weight(new double[] {1.9, 2.2, 9}))
                .isCloseTo(13.816 / 16.25, within(1e-9));
    }

    @Test
    void whatWasNotSeenHasNoWeight() {
        SeenDensity one = density(true, false, false);

        assertThat(one.precision()[0]).containsExactly(new double[] {25, 0, 0}, within(1e-9));
        assertThat(one.precision()[1]).containsExactly(0, 0, 0);
        assertThat(one.precision()[2]).containsExactly(0, 0, 0);
        assertThat(one.weighted(0.5)).as("25 · (2 − 0.5)").containsExactly(new double[] {37.5, 0, 0}, within(1e-9));
    }
}
