package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.learning.SimulatedNursery.profile;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.apache.commons.numbers.gamma.LogBeta;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.learning.BatchRecord.Lived;

/** One batch pulls the profile's survival only so far; how far, by searching the plane that docs/models/learning.md states. */
class LearnedSurvivalTest {

    private static final CropProfile BEFORE = SimulatedNursery.profile(1, 0.1);

    private static CropProfile learned(Lived lived) {
        var record = new BatchRecord("B", "V", "S", false, List.of(), List.of(), Map.of(Stage.STICK, lived), 0, 0);
        return Learning.learn(BEFORE, List.of(record), SimulatedNursery.START).profile();
    }

    @ParameterizedTest(name = "{1} of {0} lived")
    @CsvSource({"200, 100", "1000, 600", "50, 50"})
    void ofOneBatchIsTheBestOfTheBetaBinomialAndThePriorsOfTheDocument(int begun, int survived) {
        double[] best = best(new Lived(begun, survived));
        var stage = learned(new Lived(begun, survived)).of(Stage.STICK);

        assertThat(stage.survivalMean()).isCloseTo(best[0], within(0.0015));
        assertThat(Math.log(stage.survivalWeight())).isCloseTo(Math.log(best[1]), within(0.02));
    }

    @Test
    void ofABatchThatWasNeverCountedIsTheProfiles() {
        assertThat(learned(new Lived(0, 0)).of(Stage.STICK).survivalMean())
                .isEqualTo(BEFORE.of(Stage.STICK).survivalMean());
    }

    /** Mean and weight where ln BetaBinomial less the penalties is highest: ± 0.7 in logit(mean), ± 1 in ln(weight). */
    private static double[] best(Lived lived) {
        double mean = BEFORE.of(Stage.STICK).survivalMean();
        double logit0 = Math.log(mean / (1 - mean));
        double log0 = Math.log(BEFORE.of(Stage.STICK).survivalWeight());
        double highest = Double.NEGATIVE_INFINITY;
        double[] best = new double[2];
        for (double logit = logit0 - 5; logit <= logit0 + 2; logit += 0.01) {
            for (double log = log0 - 5; log <= log0 + 2; log += 0.01) {
                double weight = Math.exp(log);
                double m = 1 / (1 + Math.exp(-logit));
                double a = weight * m;
                double b = weight * (1 - m);
                double value = LogBeta.value(lived.survived() + a, lived.begun() - lived.survived() + b)
                        - LogBeta.value(a, b)
                        - Math.pow((logit - logit0) / 0.7, 2) / 2
                        - Math.pow(log - log0, 2) / 2;
                if (value > highest) {
                    highest = value;
                    best = new double[] {m, weight};
                }
            }
        }
        return best;
    }

    private static BatchRecord lived(int i, Lived stick) {
        return new BatchRecord("B" + i, "V", "S", false, List.of(), List.of(), Map.of(Stage.STICK, stick), 0, 0);
    }

    @Test
    void ofAStageFollowsTheCounts() {
        List<BatchRecord> records = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            records.add(lived(i, new Lived(1_000, 860 + i)));
        }

        LearnedProfile learned = Learning.learn(profile(1, 0.1), records, SimulatedNursery.START);

        // The counts' mean is 0.8895.
        assertThat(learned.profile().of(Stage.STICK).survivalMean()).isCloseTo(0.8895, within(0.005));
        assertThat(learned.profile().of(Stage.ROOT).survivalMean()).isEqualTo(0.97);
        assertThat(learned.evidence().stages().get(0).survivalBatches()).isEqualTo(60);
    }
}
