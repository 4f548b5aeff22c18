package rootcast.rounds;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rootcast.crop.CropRecipe;
import rootcast.crop.Phase;
import rootcast.crop.Stage;
import rootcast.ledger.BatchState;
import rootcast.outlook.DateRange;
import rootcast.saying.Saying;

/**
 * What rounds need to know of a batch with living plants.
 *
 * @param move  null if it suits the house it stands in
 * @param usual null if it need not be carried to the house that batches of its house go on to
 */
public record BatchCare(
        BatchState state,
        CropRecipe recipe,
        Expected expected,
        @Nullable MoveAdvice move,
        @Nullable MoveAdvice usual) {

    /** When the outlook expects the stages. */
    public record Expected(DateRange callusedAt, DateRange rootedAt, DateRange readyAt) {}

    /**
     * @param since when batches and their phases last came together as they are now; of a usual move, when it fell due
     * @param to    houses that would do
     */
    public record MoveAdvice(Instant since, Saying why, List<String> to) {
        public MoveAdvice {
            to = List.copyOf(to);
        }
    }

    String id() {
        return state.batch().id();
    }

    Instant stuckAt() {
        return state.batch().stuckAt();
    }

    Map<Stage, Instant> reachedAt() {
        return state.reachedAt();
    }

    boolean hasReached(Stage stage) {
        return !stage.isAfter(state.stage());
    }

    Phase phaseAt(Instant at) {
        return recipe.phaseAt(stuckAt(), reachedAt(), at);
    }

    Optional<Instant> startOf(Phase phase) {
        return recipe.startOf(phase, stuckAt(), reachedAt());
    }
}
