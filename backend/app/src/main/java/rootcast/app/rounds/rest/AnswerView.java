package rootcast.app.rounds.rest;

import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.app.rounds.Pests;
import rootcast.app.rounds.RecordedCare;
import rootcast.ledger.Entry;
import rootcast.ledger.Sample;
import rootcast.ledger.What;
import rootcast.rounds.Arrival;

/**
 * How an item was closed.
 *
 * @param by     who recorded it
 * @param reason why it was skipped
 * @param done   what was said of it, as it was sent; null if it was skipped
 */
record AnswerView(
        Instant at,
        String by,
        @Nullable String reason,
        @Nullable DoneWire done) {

    /** @param entries that it wrote */
    static AnswerView of(RecordedCare care, List<Entry> entries) {
        return new AnswerView(
                care.care().at(), care.recordedBy(), care.reason(), care.care().done() ? done(care, entries) : null);
    }

    private static DoneWire done(RecordedCare care, List<Entry> entries) {
        What.Look look = first(entries, What.Look.class);
        What.Count count = first(entries, What.Count.class);
        What.SampledCount sampled = first(entries, What.SampledCount.class);
        Sample sample = sampled == null ? null : sampled.sample();
        What.Move move = first(entries, What.Move.class);
        Pests pests = care.pests();
        Arrival arrival = care.arrival();
        return new DoneWire(
                care.care().at().atOffset(ZoneOffset.UTC),
                look == null ? null : look.cells(),
                look == null ? null : look.reached(),
                first(entries, What.StageReached.class) == null ? null : true,
                count == null ? null : count.plants(),
                sample == null ? null : sample.trays(),
                sample == null ? null : sample.cells(),
                sample == null ? null : sample.blanks(),
                move == null ? null : move.house(),
                care.care().level(),
                pests.fungusGnats(),
                pests.shoreFlies(),
                pests.traps(),
                pests.thrips(),
                pests.aphids(),
                pests.whiteflies(),
                pests.mites(),
                pests.otherPests(),
                care.nitrogenPpm(),
                care.care().ecMsPerCm(),
                arrival == null ? null : arrival.condition().wireName(),
                arrival == null ? null : arrival.boxC(),
                arrival == null ? null : arrival.standbyHours(),
                care.note(),
                null);
    }

    private static <T extends What> @Nullable T first(List<Entry> entries, Class<T> kind) {
        return entries.stream()
                .map(Entry::what)
                .filter(kind::isInstance)
                .map(kind::cast)
                .findFirst()
                .orElse(null);
    }
}
