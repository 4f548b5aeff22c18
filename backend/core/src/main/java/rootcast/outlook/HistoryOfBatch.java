package rootcast.outlook;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.ledger.BatchState;
import rootcast.outlook.BatchHistory.Plants;

/** From the ledger's state to what the outlook asks of a batch. */
public final class HistoryOfBatch {

    private HistoryOfBatch() {}

    public static BatchHistory of(BatchState state) {
        Plants base = state.fullCount() == null
                ? new Plants(state.batch().stuckAt(), state.stuckPlants())
                : plants(state.fullCount());
        BatchState.SampledAt sampled = state.sampledCount();
        long gone = sum(state.lossesSince()) + sum(state.shippedSince());
        if (sampled != null && gone > base.plants()) {
            // More left than the full count had found: only the sample, which found more, can be true.
            Plants found = new Plants(sampled.at(), sampled.alivePlants());
            return history(state, found, null, after(found, state.lossesSince()), after(found, state.shippedSince()));
        }
        BatchHistory.Sample sample = sampled == null
                ? null
                : new BatchHistory.Sample(
                        sampled.at(),
                        sampled.places(),
                        sampled.sample().cells(),
                        sampled.sample().blanks());
        return history(state, base, sample, plants(state.lossesSince()), plants(state.shippedSince()));
    }

    private static BatchHistory history(
            BatchState state,
            Plants base,
            BatchHistory.@Nullable Sample sample,
            List<Plants> losses,
            List<Plants> shipments) {
        return new BatchHistory(
                state.batch().stuckAt(),
                state.reachedAt(),
                state.placements().stream()
                        .map(placement -> new BatchHistory.Placement(placement.house(), placement.fromInclusive()))
                        .toList(),
                base,
                losses,
                shipments,
                sample,
                state.looks().stream()
                        .map(look -> new BatchHistory.Look(look.at(), look.stage(), look.cells(), look.reached()))
                        .toList());
    }

    /** What left at the very moment of the sample is taken as gone before it: the estimate was made without it. */
    private static List<Plants> after(Plants sampled, List<BatchState.PlantsAt> gone) {
        return plants(gone).stream()
                .filter(each -> each.at().isAfter(sampled.at()))
                .toList();
    }

    private static List<Plants> plants(List<BatchState.PlantsAt> gone) {
        return gone.stream().map(HistoryOfBatch::plants).toList();
    }

    private static Plants plants(BatchState.PlantsAt at) {
        return new Plants(at.at(), at.plants());
    }

    private static long sum(List<BatchState.PlantsAt> gone) {
        return gone.stream().mapToLong(BatchState.PlantsAt::plants).sum();
    }
}
