package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collections;
import java.util.EnumSet;
import java.util.List;
import java.util.Set;
import rootcast.climate.FilledSeries;
import rootcast.climate.HourSource;
import rootcast.climate.HourlySeries;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;

/**
 * From what is recorded of a batch and its houses to its {@link Outlook}.
 *
 * <p>The answer is as of the instant of the {@link HouseCurves}; nothing recorded later may be in the history. Equal
 * facts give equal answers to the last bit.
 */
public final class OutlookModel {

    private OutlookModel() {}

    public static Outlook outlook(BatchHistory history, CropProfile profile, TrayFormat format, HouseCurves houses) {
        return outlook(history, profile, format, houses, survivors(history, profile, houses));
    }

    /**
     * The part that time alone does not change: keep it until the batch has a new entry, its profile another version, or
     * a late reading came in from before its last entry.
     */
    public static Survivors survivors(BatchHistory history, CropProfile profile, HouseCurves houses) {
        StagePath path = new StagePath(history, profile, houses);
        return Survivors.of(history, profile, path, belief(history, profile, path));
    }

    public static Outlook outlook(
            BatchHistory history, CropProfile profile, TrayFormat format, HouseCurves houses, Survivors survivors) {
        StagePath path = new StagePath(history, profile, houses);
        RateBelief belief = belief(history, profile, path);
        DateDistribution[] ends = endsOf(path, belief);
        DateDistribution ready = ends[StagePath.STAGES - 1];
        FilledHours hours = FilledHours.of(history, houses);
        return new Outlook(
                houses.asOf(),
                ends[0].range(),
                ends[1].range(),
                ready.range(),
                ready,
                new SaleableTrays(survivors.whenReady(), format),
                survivors.expectedAlive(doneNow(path, belief, houses.asOf())),
                hours.missing,
                hours.filledFrom,
                hours.forecastFrom,
                usableUntil(ready.quantile(0.5), profile));
    }

    /** Progress from one instant to another, both included, for a plot: actual so far, expected from there on. */
    public static List<ProgressPoint> progress(
            BatchHistory history, CropProfile profile, HouseCurves houses, Instant from, Instant until, Duration step) {
        StagePath path = new StagePath(history, profile, houses);
        RateBelief belief = belief(history, profile, path);
        double[] multipliers = {belief.quantile(0.1), belief.quantile(0.5), belief.quantile(0.9)};
        long[][] ends = new long[multipliers.length][];
        for (int i = 0; i < multipliers.length; i++) {
            ends[i] = path.ends(multipliers[i]);
        }
        List<ProgressPoint> points = new ArrayList<>();
        for (Instant at = from; !at.isAfter(until); at = at.plus(step)) {
            long millis = at.toEpochMilli();
            points.add(new ProgressPoint(
                    at,
                    path.progress(ends[0], multipliers[0], millis),
                    path.progress(ends[1], multipliers[1], millis),
                    path.progress(ends[2], multipliers[2], millis)));
        }
        return points;
    }

    private static RateBelief belief(BatchHistory history, CropProfile profile, StagePath path) {
        return RateBelief.given(profile.rateSpread(), new RateEvidence(history, path));
    }

    /** How fast the batch is believed to be, after everything that was seen of it. */
    public static RateBelief rate(BatchHistory history, CropProfile profile, HouseCurves houses) {
        return belief(history, profile, new StagePath(history, profile, houses));
    }

    private static DateDistribution[] endsOf(StagePath path, RateBelief belief) {
        long[][] millis = new long[StagePath.STAGES][RateBelief.NODES];
        for (int node = 0; node < RateBelief.NODES; node++) {
            long[] ends = path.ends(belief.multiplier(node));
            for (int stage = 0; stage < StagePath.STAGES; stage++) {
                millis[stage][node] = ends[stage];
            }
        }
        DateDistribution[] distributions = new DateDistribution[StagePath.STAGES];
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            distributions[stage] = new DateDistribution(belief, millis[stage]);
        }
        return distributions;
    }

    private static double[] doneNow(StagePath path, RateBelief belief, Instant asOf) {
        double median = belief.quantile(0.5);
        return path.doneOfEach(path.ends(median), median, asOf);
    }

    private static Instant usableUntil(Instant ready, CropProfile profile) {
        return ready.equals(DateDistribution.NEVER) ? ready : ready.plus(Duration.ofDays(profile.holdDays()));
    }

    /** The hours from sticking to ready or now, over all houses the batch stood in. */
    private record FilledHours(int missing, Set<HourSource> filledFrom, HourSource forecastFrom) {

        static FilledHours of(BatchHistory history, HouseCurves houses) {
            Instant end = history.reached(Stage.READY).orElse(houses.asOf());
            int missing = 0;
            Set<HourSource> filledFrom = EnumSet.noneOf(HourSource.class);
            List<BatchHistory.Stay> stays = history.stays();
            for (int i = 0; i < stays.size(); i++) {
                Instant until = i + 1 < stays.size() ? stays.get(i + 1).fromInclusive() : end;
                long fromHour = HourlySeries.hourOf(stays.get(i).fromInclusive());
                long untilHour = HourlySeries.hourOf(until.isBefore(end) ? until : end);
                FilledSeries climate = houses.climateOf(stays.get(i).house());
                int missingHere = climate.missingHours(fromHour, untilHour);
                if (missingHere > 0) {
                    missing += missingHere;
                    filledFrom.addAll(climate.bridgedBy(fromHour, untilHour));
                }
            }
            FilledSeries now = houses.climateOf(stays.get(stays.size() - 1).house());
            return new FilledHours(missing, Collections.unmodifiableSet(filledFrom), now.sourceOf(now.nextHour()));
        }
    }
}
