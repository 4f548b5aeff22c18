package rootcast.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static rootcast.ledger.OneBatch.NOW;
import static rootcast.ledger.OneBatch.STUCK;
import static rootcast.ledger.OneBatch.entry;
import static rootcast.ledger.OneBatch.hour;

import org.junit.jupiter.api.Test;
import rootcast.crop.Stage;
import rootcast.ledger.BatchState.LookAt;

/** Looks at some cells for a stage. The batch has 980 plants in ten trays of 100 cells. */
class LookTest {

    @Test
    void aLookPostsNothingAndIsKeptWithItsMoment() {
        var batch = OneBatch.ofTenTrays().write(20, new What.Look(Stage.CALLUS, 50, 34));

        assertThat(batch.postingsOf(2)).isEmpty();
        assertThat(batch.now().alivePlants()).isEqualTo(980);
        assertThat(batch.now().stage()).isEqualTo(Stage.STICK);
        assertThat(batch.now().looks()).containsExactly(new LookAt(hour(20), Stage.CALLUS, 50, 34));
        assertThat(batch.at(19).looks()).isEmpty();
    }

    @Test
    void looksStandInTheOrderTheyHappenedAndOutliveACount() {
        var batch = OneBatch.ofTenTrays()
                .write(20, new What.Look(Stage.ROOT, 50, 0))
                .write(10, new What.Look(Stage.CALLUS, 980, 980))
                .write(30, new What.Count(970));

        assertThat(batch.now().looks())
                .containsExactly(new LookAt(hour(10), Stage.CALLUS, 980, 980), new LookAt(hour(20), Stage.ROOT, 50, 0));
    }

    @Test
    void aReversedLookCountsAsNeverMade() {
        var batch = OneBatch.ofTenTrays()
                .write(20, new What.Look(Stage.CALLUS, 50, 34))
                .write(21, new What.Reversal(entry(2), "it was another batch"));

        assertThat(batch.now().looks()).isEmpty();
    }

    @Test
    void amountsOutsideTheBatchAreRefusedWithTheirLimits() {
        var batch = OneBatch.ofTenTrays();

        assertThat(batch.refusal(hour(5), new What.Look(Stage.CALLUS, 0, 0)))
                .isEqualTo(new Refusal.OutOfRange("cells", 0, 1, 980));
        assertThat(batch.refusal(hour(5), new What.Look(Stage.CALLUS, 981, 0)))
                .isEqualTo(new Refusal.OutOfRange("cells", 981, 1, 980));
        assertThat(batch.refusal(hour(5), new What.Look(Stage.CALLUS, 50, 51)))
                .isEqualTo(new Refusal.OutOfRange("reached", 51, 0, 50));
        assertThat(batch.refusal(hour(5), new What.Look(Stage.CALLUS, 50, -1)))
                .isEqualTo(new Refusal.OutOfRange("reached", -1, 0, 50));
    }

    @Test
    void aLookBeforeStickingOrInTheFutureIsRefused() {
        var batch = OneBatch.ofTenTrays();
        var look = new What.Look(Stage.ROOT, 50, 0);

        assertThat(batch.refusal(hour(-1), look)).isEqualTo(new Refusal.BeforeSticking(hour(-1), STUCK));
        assertThat(batch.refusal(hour(101), look)).isEqualTo(new Refusal.InTheFuture(hour(101), NOW));
    }

    @Test
    void nobodyLooksForStickingOrShipping() {
        assertThatIllegalArgumentException().isThrownBy(() -> new What.Look(Stage.STICK, 50, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> new What.Look(Stage.SHIP, 50, 0));
    }
}
