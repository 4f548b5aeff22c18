package rootcast.rounds;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;
import rootcast.crop.Stage;
import rootcast.ledger.BatchState;
import rootcast.outlook.UsualMove;
import rootcast.saying.Saying;

/**
 * The house that batches of a house usually go on to, as somebody stated it.
 *
 * @param statedAt nothing was overdue before anybody had said so
 */
public record MoveOn(UsualMove move, Instant statedAt) {

    /**
     * Of a batch that has come so far and still stands where it stood. Nothing is asked for while the next house is closed,
     * nor of a batch that is ready, for it waits for its ship day, nor of one that was in the next house before: somebody
     * carried it back.
     *
     * @param state  of a batch in the house that is spoken of
     * @param closed houses that must not be entered now, with what closes them
     */
    public Optional<BatchCare.MoveAdvice> adviceFor(BatchState state, Map<String, Treatment> closed) {
        boolean isDue = !move.reached().isAfter(state.stage())
                && Stage.READY.isAfter(state.stage())
                && !closed.containsKey(move.to())
                && state.placements().stream()
                        .noneMatch(placement -> placement.house().equals(move.to()));
        if (!isDue) {
            return Optional.empty();
        }
        Instant reached = state.reachedAt().entrySet().stream()
                .filter(seen -> !move.reached().isAfter(seen.getKey()))
                .map(Map.Entry::getValue)
                .min(Instant::compareTo)
                .orElseThrow();
        Instant came = state.placements().get(state.placements().size() - 1).fromInclusive();
        Instant since =
                Stream.of(reached, came, statedAt).max(Instant::compareTo).orElseThrow();
        Saying why = Saying.of(Why.USUAL_MOVE, move.to(), move.reached().name());
        return Optional.of(new BatchCare.MoveAdvice(since, why, List.of(move.to())));
    }
}
