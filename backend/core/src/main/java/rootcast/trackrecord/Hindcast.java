package rootcast.trackrecord;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import rootcast.crop.Calibration;
import rootcast.crop.CropProfile;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.Foretold;
import rootcast.outlook.HouseCurves;

/**
 * A finished batch foretold from one day of its life by the model alone, and what was seen of it in the end.
 *
 * <p>Days are counted from sticking and sorted by the lead that was foretold, as a user meets them: no origin knows how it will end.
 *
 * @param house    where it stood at the end: batches of one house share its weather
 * @param origin     that it was foretold at
 * @param likelihood by quantile of what was foretold (see {@link Foretold}): of all that was seen afterwards, had it been ready then
 */
public record Hindcast(
        String batch, String house, Instant readyAt, Instant origin, double leadDays, double[] likelihood) {

    /** The newest of a crop: they tell a range's width to a sixteenth, and older ones count less. Our choice, for the cost's sake. */
    private static final int MOST_BATCHES = 200;

    private record Moment(Instant at, boolean isEnd, FinishedBatch batch) {

        static final Comparator<Moment> ORDER = Comparator.comparing(Moment::at)
                .thenComparing(Moment::isEnd)
                .thenComparing(moment -> moment.batch.id());
    }

    /**
     * The newest {@value #MOST_BATCHES} batches, by the profile that each has at a moment, which must not have learned from it; ordered by the
     * moment that batches were ready, batch and day.
     */
    public static List<Hindcast> of(List<FinishedBatch> batches, BackTest.PastHouses houses) {
        Map<String, List<Foretold>> foretold = new HashMap<>();
        List<Hindcast> hindcasts = new ArrayList<>();
        Stream<FinishedBatch> newest = batches.stream()
                .sorted(Comparator.comparing(FinishedBatch::seenReadyAt)
                        .reversed()
                        .thenComparing(FinishedBatch::id))
                .limit(MOST_BATCHES);
        newest.flatMap(Hindcast::moments).sorted(Moment.ORDER).forEach(moment -> {
            FinishedBatch batch = moment.batch;
            HouseCurves curves = houses.at(moment.at);
            CropProfile profile = batch.then().profileAt(moment.at).calibrated(Calibration.NONE);
            BatchHistory history = batch.then().historyAt(moment.at);
            if (moment.isEnd) {
                List<Foretold> ofBatch = foretold.getOrDefault(batch.id(), List.of());
                held(batch, ofBatch, history, profile, curves).forEach(hindcasts::add);
                foretold.remove(batch.id());
            } else {
                foretold.computeIfAbsent(batch.id(), any -> new ArrayList<>())
                        .add(BatchOutlook.of(history, profile, batch.format(), curves)
                                .foretold());
            }
        });
        return hindcasts;
    }

    private static Stream<Moment> moments(FinishedBatch batch) {
        return Stream.concat(
                Stream.iterate(
                                batch.stuckAt().plus(Duration.ofDays(1)),
                                at -> at.isBefore(batch.seenReadyAt()),
                                at -> at.plus(Duration.ofDays(1)))
                        .map(at -> new Moment(at, false, batch)),
                Stream.of(new Moment(batch.seenReadyAt(), true, batch)));
    }

    private static Stream<Hindcast> held(
            FinishedBatch batch, List<Foretold> foretold, BatchHistory end, CropProfile profile, HouseCurves curves) {
        return foretold.stream()
                .filter(each -> Double.isFinite(each.leadDays()))
                .map(each -> new Hindcast(
                        batch.id(),
                        end.house(),
                        batch.seenReadyAt(),
                        each.foretoldAt(),
                        each.leadDays(),
                        each.likelihood(end, profile, curves)));
    }
}
