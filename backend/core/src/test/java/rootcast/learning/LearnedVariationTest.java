package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.learning.SimulatedNursery.profile;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.crop.Variation;
import rootcast.learning.SimulatedNursery.Manner;

/** What is learned of how batches vary beside their rate. Unlearned, batches differ by 0.3 in ln of how far their cells lie apart. */
class LearnedVariationTest {

    private static final int BATCHES = 40;

    private static List<BatchRecord> ofBatchesWhoseCellsDifferBy(long seed, double cellSpread, String mark) {
        return new SimulatedNursery(seed, Manner.usual(BATCHES).spreads(0.1, cellSpread))
                .records().stream()
                        .map(record -> new BatchRecord(
                                record.id() + mark,
                                record.variety(),
                                record.site(),
                                record.finished(),
                                record.stages(),
                                record.looks(),
                                record.lived(),
                                record.passed(),
                                record.entered()))
                        .toList();
    }

    private static Variation learned(long seed, List<BatchRecord> records) {
        return Learning.learn(profile(1.25, 0.15), records, new SimulatedNursery(seed, Manner.usual(BATCHES)).end)
                .profile()
                .variation();
    }

    /** Half of them with cells at 0.06 and half at 0.24: ±ln 2, where the outer of three nodes lie for a standard deviation of ln 2/√3 = 0.4. */
    @ParameterizedTest
    @ValueSource(longs = {1, 2, 3})
    void batchesWithCellsNearTogetherAndFarApartAreToldFromBatchesAlike(long seed) {
        List<BatchRecord> unlike = new ArrayList<>(ofBatchesWhoseCellsDifferBy(seed, 0.06, "a"));
        unlike.addAll(ofBatchesWhoseCellsDifferBy(seed + 100, 0.24, "b"));

        assertThat(learned(seed, unlike).cellsDiffer()).isGreaterThan(0.25);
        assertThat(learned(seed, ofBatchesWhoseCellsDifferBy(seed, 0.12, "")).cellsDiffer())
                .isLessThan(0.2);
    }

    /** 40 batches that differ by a tenth: the mean of their ln rates is known to 0.1/√40 = 0.016, that of one stage's days to a little more. */
    @Test
    void theDaysAreInLessDoubtTheMoreBatchesWereSeen() {
        List<BatchRecord> all = ofBatchesWhoseCellsDifferBy(4, 0.12, "");

        assertThat(learned(4, all).daysDoubt()).isBetween(0.012, 0.04);
        assertThat(learned(4, all.subList(0, 5)).daysDoubt())
                .isGreaterThan(2 * learned(4, all).daysDoubt());
    }

    /** Three of four stages that a later entry shows to have ended were entered: (3 + 1)/(4 + 2). */
    @Test
    void theShareOfStagesEnteredIsCounted() {
        List<BatchRecord> records = new ArrayList<>();
        for (int i = 0; i < 2; i++) {
            records.add(new BatchRecord(
                    "B" + i, "V", "S", true, List.of(), List.of(), java.util.Map.of(), 2, i == 0 ? 2 : 1));
        }

        assertThat(learned(5, records).enteredShare()).isCloseTo(4 / 6.0, within(1e-3));
    }
}
