package rootcast.crop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** What a profile, a tray format and the stages accept, and what they refuse with which numbers. */
class CropProfileTest {

    private static final Cardinals CARDINALS = new Cardinals(Cardinals.Form.BETA, 8, 24, 35, 22);

    @Test
    void aProfileFindsItsStages() {
        var profile = new CropProfile(
                List.of(stage(Stage.STICK, 7), stage(Stage.CALLUS, 10), stage(Stage.ROOT, 14)), 0.1, 14);

        assertThat(profile.of(Stage.STICK).daysAtReference()).isEqualTo(7);
        assertThat(profile.of(Stage.ROOT).daysAtReference()).isEqualTo(14);
    }

    @Test
    void aProfileKeepsItsStagesWhenTheListItCameFromChanges() {
        var stages = new ArrayList<>(List.of(stage(Stage.STICK, 7), stage(Stage.CALLUS, 10), stage(Stage.ROOT, 14)));
        var profile = new CropProfile(stages, 0.1, 14);

        stages.clear();

        assertThat(profile.stages()).hasSize(3);
    }

    @Test
    void stagesComeOneAfterAnother() {
        assertThat(Stage.values()).containsExactly(Stage.STICK, Stage.CALLUS, Stage.ROOT, Stage.READY, Stage.SHIP);
        assertThat(Stage.READY.isAfter(Stage.ROOT)).isTrue();
        assertThat(Stage.ROOT.isAfter(Stage.ROOT)).isFalse();
        assertThat(Stage.STICK.isAfter(Stage.CALLUS)).isFalse();
    }

    /** 7 days at the crop's rate; a variety 1.25 times as fast at a site 0.8 times as fast takes 7 again. */
    @Test
    void aBatchGoesByTheDaysOfItsVarietyAtItsSite() {
        var rates = new RateFactors(Map.of("quick", 1.25), Map.of("north", 0.8));
        var profile = new CropProfile(
                List.of(stage(Stage.STICK, 7), stage(Stage.CALLUS, 10), stage(Stage.ROOT, 14)), 0.1, 14, 0.2, rates);

        assertThat(profile.cellSpread()).isEqualTo(0.2);
        assertThat(days(profile.forBatch("quick", "south"))).isCloseTo(5.6, within(1e-12));
        assertThat(days(profile.forBatch("plain", "north"))).isCloseTo(8.75, within(1e-12));
        assertThat(days(profile.forBatch("quick", "north"))).isCloseTo(7, within(1e-12));
        assertThat(profile.forBatch("plain", "south").stages()).isEqualTo(profile.stages());
        assertThat(profile.forBatch("quick", "north").rates()).isEqualTo(RateFactors.NONE);
        assertThat(profile.forBatch("quick", "north").cellSpread()).isEqualTo(0.2);
    }

    private static double days(CropProfile profile) {
        return profile.of(Stage.STICK).daysAtReference();
    }

    @Nested
    class Refuses {

        @Test
        void factorsAndCellSpreadsOutsideTheirRange() {
            var stages = List.of(stage(Stage.STICK, 7), stage(Stage.CALLUS, 10), stage(Stage.ROOT, 200));

            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new RateFactors(Map.of("quick", 4.1), Map.of()))
                    .withMessageContaining("4.1")
                    .withMessageContaining("quick");
            assertThatIllegalArgumentException().isThrownBy(() -> new RateFactors(Map.of(), Map.of("north", 0.0)));
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new CropProfile(stages, 0.1, 14, 0.005, RateFactors.NONE))
                    .withMessageContaining("0.005");
            // 200 days at half the rate are more than a year.
            assertThatIllegalArgumentException()
                    .isThrownBy(() ->
                            new CropProfile(stages, 0.1, 14, 0.12, new RateFactors(Map.of("slow", 0.5), Map.of())))
                    .withMessageContaining("400");
        }

        @Test
        void aProfileWithoutAStageOrOutOfOrder() {
            var stick = stage(Stage.STICK, 7);
            var callus = stage(Stage.CALLUS, 10);
            var root = stage(Stage.ROOT, 14);

            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new CropProfile(List.of(stick, root), 0.1, 14))
                    .withMessageContaining("[STICK, ROOT]");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new CropProfile(List.of(callus, stick, root), 0.1, 14));
        }

        @ParameterizedTest(name = "spread {0}, hold {1} days")
        @CsvSource({"-0.01, 14", "1.01, 14", "NaN, 14", "0.1, -1", "0.1, 366"})
        void spreadAndHoldDaysOutsideTheirRange(double spread, int holdDays) {
            var stages = List.of(stage(Stage.STICK, 7), stage(Stage.CALLUS, 10), stage(Stage.ROOT, 14));

            assertThatIllegalArgumentException().isThrownBy(() -> new CropProfile(stages, spread, holdDays));
        }

        @ParameterizedTest(name = "{0} days, survival {1} of weight {2}")
        @CsvSource({
            "0, 0.9, 50",
            "365.5, 0.9, 50",
            "NaN, 0.9, 50",
            "7, 0, 50",
            "7, 1, 50",
            "7, NaN, 50",
            "7, 0.9, 0",
            "7, 0.9, 1000001",
        })
        void stageValuesOutsideTheirRange(double days, double mean, double weight) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new StageProfile(Stage.STICK, days, CARDINALS, mean, weight));
        }

        @Test
        void aStageThatTakesNoTime() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new StageProfile(Stage.READY, 7, CARDINALS, 0.9, 50))
                    .withMessageContaining("READY");
        }

        @ParameterizedTest(name = "{0} < {1} < {2}, reference {3}")
        @CsvSource({
            "24, 8, 35, 22",
            "8, 35, 24, 22",
            "8, 24, 35, 8",
            "8, 24, 35, 35",
            "NaN, 24, 35, 22",
            "8, 24, 35, NaN"
        })
        void cardinalsThatDoNotRiseOrAReferenceWithoutDevelopment(double min, double optimum, double max, double ref) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new Cardinals(Cardinals.Form.LINEAR, min, optimum, max, ref));
        }

        @ParameterizedTest(name = "{0} cells, {1} for sale, {2} × {3} mm")
        @CsvSource({
            "0, 1, 540, 280",
            "2001, 1, 540, 280",
            "84, 85, 540, 280",
            "84, 0, 540, 280",
            "84, 80, 0, 280",
            "84, 80, 540, 5001"
        })
        void trayFormatsThatCannotBe(int cells, int saleCount, int lengthMm, int widthMm) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new TrayFormat("t", cells, saleCount, lengthMm, widthMm));
        }
    }

    private static StageProfile stage(Stage stage, double days) {
        return new StageProfile(stage, days, CARDINALS, 0.95, 50);
    }
}
