package rootcast.learning;

import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import rootcast.crop.Stage;
import rootcast.learning.BatchRecord.Lived;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.BatchState;
import rootcast.ledger.What;

/**
 * How many plants of a batch lived through each of its stages, by the books.
 *
 * <p>A stage tells if it was seen to end and the plants were counted after that, all or some of them, or all have left. The
 * stage in which the last plant died tells that none lived, though nobody will ever see it end; what was shipped out of a
 * stage that was not seen to end says nothing, since its plants might have lived or not.
 *
 * <p>Where the books rest on a sample of n cells, the share tells as much as n plants do and not as all that it stood for:
 * cells drawn from a beta-binomial number of plants are beta-binomial themselves (Skellam 1948).
 */
public final class LivedStages {

    private static final Stage[] ENDS_IN = {Stage.CALLUS, Stage.ROOT, Stage.READY};

    private LivedStages() {}

    public static Map<Stage, Lived> of(BatchFold fold) {
        Map<Stage, Lived> lived = new EnumMap<>(Stage.class);
        BatchState now = fold.state();
        Batch batch = now.batch();
        Instant begin = batch.stuckAt();
        for (int i = 0; i < ENDS_IN.length; i++) {
            Instant end = now.reachedAt().get(ENDS_IN[i]);
            BatchState before = fold.stateAt(begin).orElse(now);
            if (end == null) {
                if (now.isFinished() && now.shippedPlants() == before.shippedPlants()) {
                    lived.put(Stage.GROWING.get(i), new Lived(before.alivePlants(), 0));
                }
                break;
            }
            if (now.isFinished() || countedSince(fold, end)) {
                lived.put(
                        Stage.GROWING.get(i), through(before, fold.stateAt(end).orElseThrow()));
            }
            begin = end;
        }
        return lived;
    }

    private static Lived through(BatchState before, BatchState after) {
        int left = after.alivePlants() + after.shippedPlants() - before.shippedPlants();
        int begun = before.alivePlants();
        // A later count may have found more than the books had: nobody rises from the dead.
        int survived = Math.min(begun, left);
        int telling = Math.min(begun, Math.min(sampledCells(before), sampledCells(after)));
        return telling == begun
                ? new Lived(begun, survived)
                : new Lived(telling, (int) Math.round((double) telling * survived / begun));
    }

    /** Cells that the books rest on at that moment; no limit if every plant was counted, or set, last. */
    private static int sampledCells(BatchState state) {
        BatchState.SampledAt sampled = state.sampledCount();
        return sampled == null ? Integer.MAX_VALUE : sampled.sample().cells();
    }

    private static boolean countedSince(BatchFold fold, Instant end) {
        return fold.steps().stream()
                .map(BatchFold.Step::entry)
                .filter(entry -> !entry.happenedAt().isBefore(end))
                .anyMatch(entry -> entry.what() instanceof What.Count || entry.what() instanceof What.SampledCount);
    }
}
