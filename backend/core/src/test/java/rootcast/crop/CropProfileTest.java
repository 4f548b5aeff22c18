package rootcast.crop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.util.ArrayList;
import java.util.List;
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

    @Nested
    class Refuses {

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
