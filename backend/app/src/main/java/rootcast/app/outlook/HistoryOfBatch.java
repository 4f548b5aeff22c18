package rootcast.app.outlook;

import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.ledger.Standing;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchHistory.Plants;

/** From the ledger's standing to what the outlook asks of a batch. */
public final class HistoryOfBatch {

    private HistoryOfBatch() {}

    public static BatchHistory of(Standing standing) {
        Plants base = standing.fullCount() == null
                ? new Plants(standing.batch().stuckAt(), standing.stuckPlants())
                : plants(standing.fullCount());
        Standing.SampledAt sampled = standing.sampledCount();
        long gone = sum(standing.lossesSince()) + sum(standing.shippedSince());
        if (sampled != null && gone > base.plants()) {
            // More left than the full count had found: only the sample, which found more, can be true.
            Plants found = new Plants(sampled.at(), sampled.alivePlants());
            return history(
                    standing, found, null, after(found, standing.lossesSince()), after(found, standing.shippedSince()));
        }
        BatchHistory.Sample sample = sampled == null
                ? null
                : new BatchHistory.Sample(
                        sampled.at(),
                        sampled.places(),
                        sampled.sample().cells(),
                        sampled.sample().blanks());
        return history(standing, base, sample, plants(standing.lossesSince()), plants(standing.shippedSince()));
    }

    private static BatchHistory history(
            Standing standing,
            Plants base,
            BatchHistory.@Nullable Sample sample,
            List<Plants> losses,
            List<Plants> shipments) {
        return new BatchHistory(
                standing.batch().stuckAt(),
                standing.reachedAt(),
                standing.stays().stream()
                        .map(stay -> new BatchHistory.Stay(stay.house(), stay.fromInclusive()))
                        .toList(),
                base,
                losses,
                shipments,
                sample,
                standing.looks().stream()
                        .map(look -> new BatchHistory.Look(look.at(), look.stage(), look.cells(), look.reached()))
                        .toList());
    }

    /** What left at the very moment of the sample is taken as gone before it: the estimate was made without it. */
    private static List<Plants> after(Plants sampled, List<Standing.PlantsAt> gone) {
        return plants(gone).stream()
                .filter(each -> each.at().isAfter(sampled.at()))
                .toList();
    }

    private static List<Plants> plants(List<Standing.PlantsAt> gone) {
        return gone.stream().map(HistoryOfBatch::plants).toList();
    }

    private static Plants plants(Standing.PlantsAt at) {
        return new Plants(at.at(), at.plants());
    }

    private static long sum(List<Standing.PlantsAt> gone) {
        return gone.stream().mapToLong(Standing.PlantsAt::plants).sum();
    }
}
