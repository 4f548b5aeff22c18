package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import rootcast.climate.FilledSeries;
import rootcast.climate.HourSource;
import rootcast.climate.HourlySeries;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;

/**
 * The part of a batch's outlook that time alone does not change: its rate and its survivors, after everything recorded of
 * it. Ask it {@link #now} as often as the clock or the readings move on.
 *
 * <p>Keep it until the batch has a new entry, its profile another version, its house another plan, or a late reading came
 * in from before its last entry.
 */
public final class BatchOutlook {

    private final BatchHistory history;
    private final CropProfile profile;
    private final HouseCurves houses;
    private final StagePath path;
    private final StageRates rates;
    private final Survivors survivors;
    private final SaleableTrays saleable;
    private final List<BridgedStay> stays = new ArrayList<>();

    private BatchOutlook(
            BatchHistory history,
            CropProfile profile,
            HouseCurves houses,
            StagePath path,
            StageRates rates,
            Survivors survivors,
            SaleableTrays saleable) {
        this.history = history;
        this.profile = profile;
        this.houses = houses;
        this.path = path;
        this.rates = rates;
        this.survivors = survivors;
        this.saleable = saleable;
        for (BatchHistory.Stay stay : history.stays()) {
            stays.add(new BridgedStay(
                    HourlySeries.hourOf(stay.fromInclusive()), houses.bridged(stay.house(), stay.fromInclusive())));
        }
    }

    public static BatchOutlook of(BatchHistory history, CropProfile profile, TrayFormat format, HouseCurves houses) {
        StagePath path = new StagePath(history, profile, houses);
        StageRates rates = rates(history, profile, path);
        Survivors survivors = Survivors.of(history, profile, path, rates);
        return new BatchOutlook(
                history, profile, houses, path, rates, survivors, new SaleableTrays(survivors.whenReady(), format));
    }

    /**
     * The same batch if it stood elsewhere from now on, or its house were set otherwise: what was seen of it stays.
     *
     * @param houses  the same as before up to now
     * @param further stays after the last one, in order
     */
    public BatchOutlook elsewhere(HouseCurves houses, List<BatchHistory.Stay> further) {
        BatchHistory moved = history.moved(further);
        return new BatchOutlook(
                moved, profile, houses, new StagePath(moved, profile, houses), rates, survivors, saleable);
    }

    static StageRates rates(BatchHistory history, CropProfile profile, StagePath path) {
        return StageRates.given(profile.rateSpread(), new RateEvidence(history, path, profile));
    }

    public BatchHistory history() {
        return history;
    }

    public CropProfile profile() {
        return profile;
    }

    /** How fast the batch is believed to be in the stage it is in, or was last. */
    public RateBelief rate() {
        int stage = 0;
        while (stage < StagePath.STAGES - 1 && path.isSeen(stage)) {
            stage++;
        }
        return rates.of(stage);
    }

    public Survivors survivors() {
        return survivors;
    }

    /** As of the instant that the houses stand at. */
    public Outlook now() {
        Instant asOf = houses.asOf();
        double[] median = rates.atNode(RateBelief.median());
        long[] medianEnds = path.ends(median);
        DateDistribution[] ends = ends(asOf.toEpochMilli(), medianEnds);
        DateDistribution ready = ends[StagePath.STAGES - 1];
        Hours hours = hours(history.stuckAt(), history.reached(Stage.READY).orElse(asOf));
        FilledSeries here = houses.climateOf(history.house());
        return new Outlook(
                asOf,
                ends[0].range(),
                ends[1].range(),
                ready.range(),
                ready,
                saleable,
                survivors.expectedAlive(path.doneOfEach(medianEnds, median, asOf)),
                hours.missing,
                hours.sources,
                here.sourceOf(here.nextHour()),
                usableUntil(ready.quantile(0.5)));
    }

    private Instant usableUntil(Instant ready) {
        return ready.equals(DateDistribution.NEVER) ? ready : ready.plus(Duration.ofDays(profile.holdDays()));
    }

    private DateDistribution[] ends(long nowMillis, long[] medianEnds) {
        long[][] millis = new long[StagePath.STAGES][RateBelief.NODES];
        for (int node = 0; node < RateBelief.NODES; node++) {
            long[] ends = path.ends(rates.atNode(node));
            for (int stage = 0; stage < StagePath.STAGES; stage++) {
                millis[stage][node] = path.isSeen(stage) ? path.seenAt(stage) : ends[stage];
            }
        }
        DateDistribution[] distributions = new DateDistribution[StagePath.STAGES];
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            if (!path.isSeen(stage) && medianEnds[stage] > nowMillis && medianEnds[stage] != DevelopmentCurve.NEVER) {
                spread(nowMillis, stage, medianEnds).widen(millis[stage]);
            }
            distributions[stage] = new DateDistribution(rates.of(stage), millis[stage]);
        }
        return distributions;
    }

    /** The stages between now and the end of one, each weighed by the time it takes. */
    private DateSpread spread(long nowMillis, int last, long[] medianEnds) {
        double lead = medianEnds[last] - nowMillis;
        double logRatePerC = 0;
        double ratePerC = 0;
        for (int stage = 0; stage <= last; stage++) {
            double from = Math.max(nowMillis, path.startOf(stage, medianEnds));
            double share = Math.max(0, medianEnds[stage] - from) / lead;
            logRatePerC += share * path.logRatePerC(stage);
            if (share > 0 && ratePerC == 0) {
                ratePerC = path.logRatePerC(stage);
            }
        }
        Hours gap = hours(Instant.ofEpochMilli(lastSeenBefore(last)), houses.asOf());
        double gapDays = ratePerC
                * (DateSpread.BRIDGED_C * (gap.missing - gap.unmeasured) + DateSpread.UNMEASURED_C * gap.unmeasured)
                / 24;
        return new DateSpread(nowMillis, houses.spreadOf(history.house()), logRatePerC, gapDays);
    }

    /** What happened before the last end that was seen does not matter to the dates to come. */
    private long lastSeenBefore(int stage) {
        long at = history.stuckAt().toEpochMilli();
        for (int earlier = 0; earlier < stage; earlier++) {
            at = path.isSeen(earlier) ? path.seenAt(earlier) : at;
        }
        return at;
    }

    /** Hours from one moment to another, over all houses the batch stood in. */
    private record Hours(int missing, int unmeasured, Set<HourSource> sources) {}

    private record BridgedStay(long fromHour, BridgedHours bridged) {}

    private Hours hours(Instant from, Instant until) {
        long fromHour = HourlySeries.hourOf(from);
        long untilHour = HourlySeries.hourOf(until);
        int missing = 0;
        int unmeasured = 0;
        Set<HourSource> sources = java.util.EnumSet.noneOf(HourSource.class);
        for (int i = 0; i < stays.size(); i++) {
            BridgedStay stay = stays.get(i);
            long begin = Math.max(fromHour, stay.fromHour);
            long end = i + 1 < stays.size() ? Math.min(untilHour, stays.get(i + 1).fromHour) : untilHour;
            int missingHere = begin < end ? stay.bridged.missing(begin, end) : 0;
            if (missingHere > 0) {
                missing += missingHere;
                unmeasured += stay.bridged.unmeasured(begin, end);
                sources.addAll(stay.bridged.sources(begin, end));
            }
        }
        return new Hours(missing, unmeasured, java.util.Collections.unmodifiableSet(sources));
    }

    /** Progress from one instant to another, both included, for a plot: actual so far, expected from there on. */
    public List<ProgressPoint> progress(Instant from, Instant until, Duration step) {
        double[][] multipliers = {
            rates.atNode(RateBelief.P10), rates.atNode(RateBelief.median()), rates.atNode(RateBelief.P90)
        };
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
}
