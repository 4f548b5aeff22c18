package rootcast.app.ledger.rest;

import java.time.Instant;
import java.util.Locale;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Stage;
import rootcast.ledger.Entry;
import rootcast.ledger.Posting;
import rootcast.ledger.What;

/**
 * An entry with what became of it.
 *
 * @param aliveAfter plants alive right after it as the books stand today; null if it is reversed or a reversal
 */
record EntryView(
        UUID id,
        long position,
        String kind,
        Instant happenedAt,
        Instant recordedAt,
        String recordedBy,
        @Nullable Integer plants,
        @Nullable Integer trays,
        @Nullable String cause,
        @Nullable Stage stage,
        @Nullable Integer cells,
        @Nullable Integer reached,
        @Nullable String house,
        @Nullable Integer sampledTrays,
        @Nullable Integer sampledCells,
        @Nullable Integer blanks,
        @Nullable UUID reverses,
        @Nullable UUID reversedBy,
        @Nullable String reason,
        @Nullable UUID order,
        @Nullable Integer line,
        @Nullable String note,
        @Nullable Integer aliveAfter,
        java.util.List<PostingView> postings) {

    record PostingView(
            String account,
            @Nullable String house,
            @Nullable String cause,
            long plants,
            Instant effectiveAt) {
        static PostingView of(Posting posting) {
            var account = posting.account();
            return new PostingView(
                    account.kind().name().toLowerCase(Locale.ROOT),
                    account.house(),
                    account.cause() == null ? null : account.cause().wire(),
                    posting.plants(),
                    posting.effectiveAt());
        }
    }

    static EntryView of(
            Entry entry, @Nullable UUID reversedBy, @Nullable Integer aliveAfter, java.util.List<Posting> postings) {
        What what = entry.what();
        Fields fields = new Fields(what);
        return new EntryView(
                entry.id(),
                entry.position().value(),
                what.kind(),
                entry.happenedAt(),
                entry.recordedAt(),
                entry.recordedBy(),
                fields.plants,
                fields.trays,
                what instanceof What.Loss loss ? loss.cause().wire() : null,
                fields.stage,
                what instanceof What.Look look ? look.cells() : null,
                what instanceof What.Look look ? look.reached() : null,
                fields.house,
                what instanceof What.SampledCount count ? count.sample().trays() : null,
                what instanceof What.SampledCount count ? count.sample().cells() : null,
                what instanceof What.SampledCount count ? count.sample().blanks() : null,
                what instanceof What.Reversal reversal ? reversal.entry() : null,
                reversedBy,
                what instanceof What.Reversal reversal ? reversal.reason() : null,
                what instanceof What.Ship ship && ship.orderLine() != null
                        ? ship.orderLine().order()
                        : null,
                what instanceof What.Ship ship && ship.orderLine() != null
                        ? ship.orderLine().line()
                        : null,
                entry.note(),
                aliveAfter,
                postings.stream().map(PostingView::of).toList());
    }

    /** Fields that several kinds share. */
    private static final class Fields {
        private @Nullable Integer plants;
        private @Nullable Integer trays;
        private @Nullable String house;
        private @Nullable Stage stage;

        Fields(What what) {
            if (what instanceof What.Stick stick) {
                plants = stick.plants();
                trays = stick.trays();
                house = stick.house();
            } else if (what instanceof What.Loss loss) {
                plants = loss.plants();
            } else if (what instanceof What.Count count) {
                plants = count.plants();
            } else if (what instanceof What.StageReached reached) {
                stage = reached.stage();
            } else if (what instanceof What.Look look) {
                stage = look.stage();
            } else if (what instanceof What.Move move) {
                house = move.house();
            } else if (what instanceof What.Ship ship) {
                plants = ship.plants();
                trays = ship.trays();
            }
        }
    }
}
