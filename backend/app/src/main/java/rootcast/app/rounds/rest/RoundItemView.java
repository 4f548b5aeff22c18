package rootcast.app.rounds.rest;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.saying.Saying;

/**
 * A round item as it is shown.
 *
 * @param task         arrival-check, wetting-agent, draught-look, ec-check, look-callus, look-root, wean-mist, night-mist-off, mist-off, feed-step, moisture-check, scouting,
 *                     prevention, count, move, tone or ready
 * @param alive        plants by the books; null for what is of a house
 * @param state        due, carried-over, blocked, done or skipped
 * @param asks         fields that doing it must send
 * @param blockedUntil when the house may be entered again; null if it may be now
 * @param blockedBy    the product that closes it until then
 * @param fits         for a move that is open: where batches of the house go on to, or houses whose climate would suit
 * @param why          null once it is closed
 * @param answer       how it was closed; null while it is open
 */
record RoundItemView(
        String id,
        String house,
        String houseName,
        @Nullable String batch,
        @Nullable String varietyName,
        @Nullable Integer trays,
        @Nullable Integer alive,
        @Nullable String phase,
        String task,
        LocalDate dueOn,
        String state,
        @Nullable Saying why,
        List<String> asks,
        @Nullable Instant blockedUntil,
        @Nullable String blockedBy,
        List<String> fits,
        @Nullable AnswerView answer) {

    /** What closing or reopening an item answers. */
    record Closed(
            String id,
            String house,
            @Nullable String batch,
            String task,
            LocalDate dueOn,
            String state,
            Instant happenedAt,
            List<UUID> entries) {}

    /** A house on the walk, with why it may not be entered or what clashes in it. */
    record HouseOnTheWalk(
            String house,
            String name,
            int batches,
            @Nullable Instant blockedUntil,
            @Nullable String blockedBy,
            List<ClashView> clashes) {}

    /**
     * @param least lower end of what the staying batches share; null where it is open, and for mist
     * @param mist  regimes that the staying batches share; empty for the other quantities
     */
    record ClashView(
            String quantity,
            @Nullable Double least,
            @Nullable Double most,
            List<String> mist,
            List<String> stay,
            List<MoveView> move) {}

    /**
     * @param fits    open houses that suit the batch
     * @param later   houses that would suit it and are closed now
     * @param nearest what would have to give way; null if a house fits, or will
     */
    record MoveView(
            String batch,
            String crop,
            List<String> fits,
            List<LaterView> later,
            @Nullable NearestView nearest) {}

    record LaterView(String house, Instant until, String product) {}

    /** @param house where it stands, if nothing less would have to change elsewhere */
    record NearestView(String house, List<GapView> gaps) {}

    /**
     * @param asks  what the batch asks for
     * @param suits what the other batches of the house share
     */
    record GapView(String quantity, SpanView asks, SpanView suits) {}

    /**
     * @param least null where it is open, and for mist
     * @param mist  empty for the other quantities
     */
    record SpanView(@Nullable Double least, @Nullable Double most, List<String> mist) {}
}
