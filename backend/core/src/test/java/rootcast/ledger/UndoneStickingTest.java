package rootcast.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.ledger.OneBatch.entry;
import static rootcast.ledger.OneBatch.hour;

import java.util.Map;
import org.junit.jupiter.api.Test;

/** A batch stuck by mistake: as long as nothing else stands on its books, the sticking is reversed like any entry. */
class UndoneStickingTest {

    private static final What UNDO = new What.Reversal(entry(1), "typed twice");

    @Test
    void leavesNoPlantAnywhere() {
        OneBatch batch = OneBatch.ofTenTrays().write(1, UNDO);

        assertThat(batch.now().isStuck()).isFalse();
        assertThat(batch.now().isLive()).isFalse();
        assertThat(batch.now().isFinished()).isFalse();
        assertThat(batch.now().balances()).isEmpty();
        assertThat(batch.postingsOf(2))
                .extracting(posting -> Map.entry(posting.account(), posting.plants()))
                .containsExactlyInAnyOrder(Map.entry(Account.SUPPLIER, 980L), Map.entry(Account.aliveIn("A"), -980L));
    }

    @Test
    void isPossibleOnceEverythingElseIsReversed() {
        OneBatch batch = OneBatch.ofTenTrays()
                .write(1, new What.Loss(5, Cause.DAMAGE))
                .write(2, new What.Reversal(entry(2), "other batch"))
                .write(3, UNDO);

        assertThat(batch.now().isStuck()).isFalse();
    }

    @Test
    void isDoneOnceAndNothingHappensToTheBatchAfterIt() {
        OneBatch batch = OneBatch.ofTenTrays().write(1, UNDO);

        assertThat(batch.refusal(hour(2), UNDO)).isEqualTo(new Refusal.AlreadyReversed(entry(1), entry(2)));
        assertThat(batch.refusal(hour(2), new What.Count(10))).isInstanceOf(Refusal.BeforeSticking.class);
    }
}
