package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.List;
import org.junit.jupiter.api.Test;
import rootcast.crop.Stage;

/** What whoever has to decide on a profile reads. */
class EvidenceInWordsTest {

    private static Evidence.OfStage stage(Stage stage, double before, double learned) {
        return new Evidence.OfStage(stage, before, learned, learned - 0.5, learned + 0.6, 12, 0.9, 0.95, 3);
    }

    @Test
    void eachFigureHasItsSentence() {
        Evidence evidence = new Evidence(
                Instant.parse("2026-03-02T00:00:00Z"),
                12,
                5,
                List.of(stage(Stage.STICK, 8, 9), stage(Stage.CALLUS, 10, 9), stage(Stage.ROOT, 10, 10.04)),
                0.1,
                0.083,
                0.12,
                0.15,
                2.0,
                List.of(
                        new Evidence.OfCardinals(Stage.STICK, true, "far apart", null, null, 24.0, null),
                        new Evidence.OfCardinals(Stage.ROOT, false, "too few", null, null, null, null)),
                List.of(),
                List.of(),
                List.of());

        Evidence added = EvidenceInWords.added(evidence);

        assertThat(added.text())
                .containsExactly(
                        "12 finished and 5 running batches.",
                        "Sticking to callus: 9.0 days at reference (80 %: 8.5 to 9.6), 13 % longer than before;"
                                + " seen through in 12 batches.",
                        "Callus to roots: 9.0 days at reference (80 %: 8.5 to 9.6), 10 % shorter than before;"
                                + " seen through in 12 batches.",
                        "Roots to ready: 10.0 days at reference (80 %: 9.5 to 10.6), as before;"
                                + " seen through in 12 batches.",
                        "Batches differ by 8.3 % in rate (the profile said 10.0 %).",
                        "Where no look tells, a stage is taken to have been complete for up to 2.0 days when it was seen.",
                        "Sticking to callus: cardinal temperatures told: far apart.",
                        "Roots to ready: cardinal temperatures kept as they were: too few.");
        assertThat(added.stages()).isEqualTo(evidence.stages());
        assertThat(added.cardinals()).isEqualTo(evidence.cardinals());
    }
}
