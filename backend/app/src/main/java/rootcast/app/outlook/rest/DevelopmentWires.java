package rootcast.app.outlook.rest;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import rootcast.app.climate.LiveClimate;
import rootcast.app.climate.LiveLock;
import rootcast.app.outlook.BatchPicture;
import rootcast.app.outlook.LiveBatches;
import rootcast.climate.FilledSeries;
import rootcast.climate.HourSource;
import rootcast.climate.HourlySeries;
import rootcast.crop.Stage;
import rootcast.ledger.Standing;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.Outlook;

/** The picture behind a batch's dates: temperature by the hour and progress, from sticking to the late ready date. */
@ApplicationScoped
class DevelopmentWires {

    private static final Duration STEP = Duration.ofHours(6);
    private static final Duration FURTHEST = Duration.ofDays(60);
    private static final Duration MARGIN = Duration.ofDays(1);

    @Inject
    LiveBatches batches;

    @Inject
    LiveClimate climate;

    @Inject
    LiveLock live;

    /** @param progress in stages done: 1 is callused, 2 rooted, 3 ready */
    record Development(
            String batch, Instant asOf, List<HourWire> hours, List<ProgressWire> progress, List<ReachedWire> stages) {}

    /** @param source measured, filled or forecast */
    record HourWire(Instant at, double mediumC, String house, String source) {}

    record ProgressWire(Instant at, double p10, double p50, double p90) {}

    record ReachedWire(Stage stage, Instant reachedAt) {}

    Development of(BatchPicture picture) {
        return live.holding(() -> {
            Instant until = end(picture);
            return new Development(
                    picture.batch().id(),
                    batches.asOf(),
                    hours(picture, until),
                    batches.progress(picture, until, STEP).stream()
                            .map(point -> new ProgressWire(point.at(), point.p10(), point.p50(), point.p90()))
                            .toList(),
                    picture.standing().reachedAt().entrySet().stream()
                            .map(each -> new ReachedWire(each.getKey(), each.getValue()))
                            .sorted(java.util.Comparator.comparing(ReachedWire::stage))
                            .toList());
        });
    }

    private Instant end(BatchPicture picture) {
        Outlook outlook = picture.outlook();
        if (outlook == null) {
            return batches.asOf();
        }
        Instant furthest = batches.asOf().plus(FURTHEST);
        Instant late = outlook.readyAt().p90();
        Instant end = late.equals(DateDistribution.NEVER) || late.isAfter(furthest) ? furthest : late;
        return (end.isBefore(batches.asOf()) ? batches.asOf() : end).plus(MARGIN);
    }

    private List<HourWire> hours(BatchPicture picture, Instant until) {
        double referenceC =
                batches.profileOf(picture).of(Stage.STICK).cardinals().referenceC();
        List<Standing.Stay> stays = picture.standing().stays();
        List<HourWire> hours = new ArrayList<>();
        int stay = 0;
        for (long hour = HourlySeries.hourOf(picture.batch().stuckAt()); hour < HourlySeries.hourOf(until); hour++) {
            Instant at = HourlySeries.startOf(hour);
            while (stay + 1 < stays.size()
                    && !stays.get(stay + 1).fromInclusive().isAfter(at)) {
                stay++;
            }
            String house = stays.get(stay).house();
            FilledSeries filled = climate.curves().climateOf(house);
            hours.add(new HourWire(at, filled.celsius(hour, referenceC), house, source(filled, hour)));
        }
        return hours;
    }

    private static String source(FilledSeries filled, long hour) {
        if (hour >= filled.nextHour()) {
            return "forecast";
        }
        return filled.sourceOf(hour) == HourSource.MEASURED ? "measured" : "filled";
    }
}
