package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.learning.SimulatedNursery.REFERENCE_C;
import static rootcast.learning.SimulatedNursery.learned;
import static rootcast.learning.SimulatedNursery.profile;
import static rootcast.learning.SimulatedNursery.wholeRatio;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.learning.SimulatedNursery.Manner;

/** Cardinal temperatures that batches teach, and when they teach none. The truth has Wang and Engel's response. */
class LearnedCardinalsTest {

    @Test
    void areKeptAndSaidToBeWhereTheBatchesStoodAlikeWarm() {
        var learned = learned(1, Manner.usual(30).setpoints(22), profile(1, 0.1));

        for (int k = 0; k < 3; k++) {
            Evidence.OfCardinals cardinals = learned.evidence().cardinals().get(k);
            assertThat(cardinals.identified()).isFalse();
            assertThat(cardinals.why().code()).isEqualTo("too-narrow");
            assertThat(cardinals.why().values())
                    .containsEntry("batches", 30)
                    .containsEntry("quantity", "medium-temperature")
                    .hasEntrySatisfying(
                            "width", width -> assertThat((double) width).isBetween(0.0, 2.0));
            assertThat(learned.profile().stages().get(k).cardinals())
                    .isEqualTo(profile(1, 0.1).stages().get(k).cardinals());
        }
    }

    @Test
    void areKeptWithFewBatches() {
        var learned = learned(1, Manner.usual(6).setpoints(18, 28), profile(1, 0.1));

        assertThat(learned.evidence().cardinals())
                .allMatch(cardinals -> !cardinals.identified())
                .allMatch(cardinals -> cardinals.why().code().equals("too-few-batches")
                        && cardinals.why().values().get("needed").equals(12));
    }

    /** The optimum of rooting is 26 °C in truth; the profile is 3 °C out. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3, 4})
    void areLearnedFromBatchesColdAndWarm(long seed) {
        List<StageProfile> stages = new ArrayList<>(profile(1.25, 0.1).stages());
        StageProfile callus = stages.get(1);
        stages.set(
                1,
                new StageProfile(
                        Stage.CALLUS,
                        callus.daysAtReference(),
                        new Cardinals(Cardinals.Form.BETA, 10, 29, 35, REFERENCE_C),
                        callus.survivalMean(),
                        callus.survivalWeight()));

        var learned = learned(seed, Manner.usual(60).setpoints(16, 19, 22, 25, 28), new CropProfile(stages, 0.1, 8));

        assertThat(learned.evidence().cardinals().get(1).identified()).isTrue();
        assertThat(learned.evidence().cardinals().get(1).why().code()).isEqualTo("found");
        assertThat(learned.profile().of(Stage.CALLUS).cardinals().optimumC()).isCloseTo(26, within(1.0));
        assertThat(wholeRatio(learned)).isCloseTo(1, within(0.05));
    }

    /**
     * Batches that fit an optimum of 28 °C best, known to a standard deviation of 1.1 °C, where 26 °C was stated, which counts as known to 2/1.645 = 1.216 °C: by hand
     * 26 + 2 · 1.216² / (1.216² + 1.1²) = 27.10, on the grid 27.0; not 28.
     */
    @Test
    void areTheMostProbableOnesAndNotThoseThatFitBest() {
        var grid = new CardinalGrid(new Cardinals(Cardinals.Form.BETA, 10, 26, 35, REFERENCE_C));
        double[] logs = new double[grid.optimaC.length];
        double[] probable = new double[grid.optimaC.length];
        for (int i = 0; i < logs.length; i++) {
            double apart = (grid.optimaC[i] - 28) / 1.1;
            logs[i] = -apart * apart / 2;
            probable[i] = logs[i] + grid.logPrior(i, grid.minimaC.length / 2);
        }

        var interval = CardinalSearch.Interval.of(logs, 0, probable, grid.optimaC);

        assertThat(interval.isWithin(CardinalSearch.WIDEST_OPTIMUM_C)).isTrue();
        assertThat(interval.bestC()).isCloseTo(27.0, within(1e-9));
    }
}
