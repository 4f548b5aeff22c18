package rootcast.app.outlook;

import java.util.List;
import rootcast.ledger.Standing;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchHistory.Plants;

/** From the ledger's standing to what the outlook asks of a batch. */
final class HistoryOfBatch {

    private HistoryOfBatch() {}

    static BatchHistory of(Standing standing) {
        Plants base = standing.fullCount() == null
                ? new Plants(standing.batch().stuckAt(), standing.stuckPlants())
                : plants(standing.fullCount());
        Standing.SampledAt sampled = standing.sampledCount();
        long gone = sum(standing.lossesSince()) + sum(standing.shippedSince());
        if (sampled != null && gone > base.plants()) {
            // More left than the full count had found: only the sample, which found more, can be true.
            return history(standing, new Plants(sampled.at(), sampled.alivePlants()), null);
        }
        BatchHistory.Sample sample = sampled == null
                ? null
                : new BatchHistory.Sample(
                        sampled.at(),
                        sampled.places(),
                        sampled.sample().cells(),
                        sampled.sample().blanks());
        return history(standing, base, sample);
    }

    private static BatchHistory history(Standing standing, Plants base, BatchHistory.Sample sample) {
        return new BatchHistory(
                standing.batch().stuckAt(),
                standing.reachedAt(),
                standing.stays().stream()
                        .map(stay -> new BatchHistory.Stay(stay.house(), stay.fromInclusive()))
                        .toList(),
                base,
                since(base, standing.lossesSince()),
                since(base, standing.shippedSince()),
                sample,
                standing.looks().stream()
                        .map(look -> new BatchHistory.Look(look.at(), look.stage(), look.cells(), look.reached()))
                        .toList());
    }

    private static List<Plants> since(Plants base, List<Standing.PlantsAt> gone) {
        return gone.stream()
                .filter(each -> !each.at().isBefore(base.at()))
                .map(HistoryOfBatch::plants)
                .toList();
    }

    private static Plants plants(Standing.PlantsAt at) {
        return new Plants(at.at(), at.plants());
    }

    private static long sum(List<Standing.PlantsAt> gone) {
        return gone.stream().mapToLong(Standing.PlantsAt::plants).sum();
    }
}
