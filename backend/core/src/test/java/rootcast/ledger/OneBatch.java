package rootcast.ledger;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.UUID;
import rootcast.crop.TrayFormat;
import rootcast.ledger.EntryRules.Decision;

/** One batch and what is written about it, in hours after sticking. Trays have 100 cells and sell with 90 good plants. */
final class OneBatch {

    static final Instant STUCK = Instant.parse("2026-01-05T11:00:00Z");
    static final TrayFormat TRAY_100 = new TrayFormat("T100", 100, 90, 540, 280);

    /** When everything is written down, unless a test says otherwise. */
    static final Instant NOW = hour(100);

    private final InMemoryLedger ledger = new InMemoryLedger();
    private final Batch batch = new Batch("B1", "north", "lav-blue", TRAY_100, STUCK);

    static Instant hour(double hours) {
        return STUCK.plus(Duration.ofMinutes(Math.round(hours * 60)));
    }

    /** Ten trays with 980 plants in house A. */
    static OneBatch ofTenTrays() {
        return new OneBatch().write(0, new What.Stick("A", 10, 980));
    }

    /** The entry must be accepted. */
    OneBatch write(double hour, What what) {
        assertThat(decide(hour(hour), what)).isInstanceOf(Decision.Accepted.class);
        return this;
    }

    Decision decide(Instant happenedAt, What what) {
        return ledger.record(batch, happenedAt, what, NOW);
    }

    /** The entry must be refused. */
    Refusal refusal(Instant happenedAt, What what) {
        int before = entries().size();
        Decision decision = decide(happenedAt, what);
        assertThat(decision).isInstanceOf(Decision.Refused.class);
        assertThat(entries()).hasSize(before);
        return ((Decision.Refused) decision).because();
    }

    /** The n-th entry that was accepted; 1 is the sticking. */
    static UUID entry(int number) {
        return InMemoryLedger.id(number);
    }

    List<Entry> entries() {
        return ledger.entriesOf(batch.id());
    }

    List<Posting> postingsOf(int number) {
        return ledger.postingsOf(entry(number));
    }

    BatchFold books() {
        return BatchFold.of(batch, entries());
    }

    BatchState now() {
        return books().state();
    }

    BatchState at(double hour) {
        return books().stateAt(hour(hour)).orElseThrow();
    }

    Batch batch() {
        return batch;
    }
}
