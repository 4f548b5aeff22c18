package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Set;
import java.util.function.LongToDoubleFunction;
import org.jspecify.annotations.Nullable;
import rootcast.climate.FilledSeries;
import rootcast.crop.Calibration;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.numerics.CountDistribution;

/**
 * The part of a batch's outlook that time alone does not change: its rate and its survivors, after everything recorded of
 * it. Ask it {@link #now} as often as the clock or the readings move on.
 *
 * <p>Keep it until the batch has a new entry, its profile another version, its house another plan, or a late reading came
 * in from before its last entry.
 */
public final class BatchOutlook {

    private static final int LAST = StagePath.STAGES - 1;

    private final BatchHistory history;
    private final CropProfile profile;
    private final HouseCurves houses;
    private final StagePath path;
    private final StageRates rates;
    private final Survivors survivors;
    private final SaleableTrays saleable;
    private final FillableTrays fillable;
    private final @Nullable Shipped shipped;
    private final CellSpread cellSpread;
    private final UnmeasuredHours unmeasured;

    private BatchOutlook(
            BatchHistory history,
            CropProfile profile,
            HouseCurves houses,
            StagePath path,
            StageRates rates,
            Survivors survivors,
            SaleableTrays saleable,
            FillableTrays fillable,
            @Nullable Shipped shipped) {
        this.history = history;
        this.profile = profile;
        this.houses = houses;
        this.path = path;
        this.rates = rates;
        this.survivors = survivors;
        this.saleable = saleable;
        this.fillable = fillable;
        this.shipped = shipped;
        this.cellSpread =
                path.isSeen(LAST) ? path.stages().lastAsCalled() : path.stages().cells(LAST);
        this.unmeasured = new UnmeasuredHours(history, houses);
    }

    /**
     * Makes the curves that {@link #of} asks for. After this and {@link HouseCurves#bringUpToDate} it only reads, and many batches may be
     * computed at once.
     */
    public static void prepare(BatchHistory history, CropProfile profile, HouseCurves houses) {
        new StagePath(history, profile, houses);
        new UnmeasuredHours(history, houses);
        MovesAhead.prepare(history, profile, houses);
    }

    public static BatchOutlook of(BatchHistory history, CropProfile profile, TrayFormat format, HouseCurves houses) {
        StagePath path = new StagePath(history, profile, houses);
        MovesAhead.prepare(history, profile, houses);
        StageRates rates = rates(history, profile, path);
        Survivors survivors = Survivors.of(history, profile, path, rates);
        return new BatchOutlook(
                history,
                profile,
                houses,
                path,
                rates,
                survivors,
                new SaleableTrays(survivors.whenReady(), format),
                new FillableTrays(survivors.whenReady(), 0, format.saleCount()),
                Shipped.of(history, survivors.whenReady(), format));
    }

    /**
     * The same batch if it stood elsewhere from now on, or its house were set otherwise: what was seen of it stays.
     *
     * @param houses  the same as before up to now
     * @param further placements after the last one, in order
     */
    public BatchOutlook elsewhere(HouseCurves houses, List<BatchHistory.Placement> further) {
        return at(history.moved(further), houses);
    }

    private BatchOutlook at(BatchHistory moved, HouseCurves houses) {
        return new BatchOutlook(
                moved,
                profile,
                houses,
                new StagePath(moved, profile, houses),
                rates,
                survivors,
                saleable,
                fillable,
                shipped);
    }

    static StageRates rates(BatchHistory history, CropProfile profile, StagePath path) {
        return StageRates.given(
                profile.rateDoubt(), profile.stageShareOfDoubt(), new RateEvidence(history, path, profile), path);
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
        while (stage < LAST && path.isSeen(stage)) {
            stage++;
        }
        return rates.of(stage);
    }

    public Survivors survivors() {
        return survivors;
    }

    /** The rates, given that no stage was entered that had not been by now. */
    private StageRates believed(StagePath.Dates dates) {
        long now = houses.asOf().toEpochMilli();
        double[] places = NotEntered.places(profile.variation(), rates, path, dates.ends(), now);
        return places == null ? rates : rates.moved(places);
    }

    private StageRates believed() {
        return believed(path.dates(rates));
    }

    /** Plants alive at a moment from the last fact on. */
    public CountDistribution aliveAt(Instant at) {
        BatchOutlook ahead = ahead();
        StageRates believed = ahead.believed();
        long[] ends = ahead.path.ends(believed, RateBelief.median());
        return survivors.alive(ahead.path.doneOfEach(ends, believed.atNode(RateBelief.median()), at));
    }

    /** When a stage is reached by the temperatures as they are known and foretold, not widened by what may yet come. */
    DateDistribution reached(Stage stage) {
        int end = StagePath.endingIn(stage);
        return new DateDistribution(rates.of(end), ahead().path.dates(rates).ends()[end]);
    }

    /** As of the instant that the houses stand at; moves that usually follow are expected to follow. */
    public Outlook now() {
        BatchOutlook ahead = ahead();
        int recorded = history.placements().size();
        return ahead.standing(ahead.history
                .placements()
                .subList(recorded, ahead.history.placements().size()));
    }

    /** The batch with the moves that are expected to follow. */
    BatchHistory expected() {
        return ahead().history;
    }

    private BatchOutlook ahead() {
        BatchHistory moved = MovesAhead.of(history, profile, path, rates, houses);
        return moved == history ? this : at(moved, houses);
    }

    /** @param moves of its placements, those that nobody has recorded */
    private Outlook standing(List<BatchHistory.Placement> moves) {
        Instant asOf = houses.asOf();
        long nowMillis = asOf.toEpochMilli();
        StagePath.Dates dates = path.dates(rates);
        StageRates believed = believed(dates);
        dates = believed == rates ? dates : path.dates(believed);
        long[][] ends = dates.ends();
        long[] medianEnds = StagePath.atNode(RateBelief.median(), ends);
        widenReady(nowMillis, ends[LAST], medianEnds);
        DateRange byModel = DateDistribution.range(ends[LAST]);
        Calibration.Knot record = record(nowMillis, medianEnds[LAST]);
        RecordedRange recorded = record == null ? null : new RecordedRange(record);
        RateBelief lastRate = dates.lastRate();
        if (recorded != null) {
            recorded.move(ends[LAST], earliest(LAST));
            lastRate = recorded.rate(lastRate);
        }
        DateDistribution ready = new DateDistribution(rates.of(LAST), ends[LAST]);
        Instant until = history.reached(Stage.READY).orElse(asOf);
        int missing = unmeasured.between(history.stuckAt(), until);
        FilledSeries here = houses.climateOf(history.houseAt(nowMillis));
        return new Outlook(
                asOf,
                range(nowMillis, 0, ends[0], medianEnds, recorded),
                range(nowMillis, 1, ends[1], medianEnds, recorded),
                ready.range(),
                ready,
                saleable,
                survivors.expectedAlive(path.doneOfEach(medianEnds, believed.atNode(RateBelief.median()), asOf)),
                missing,
                missing == 0 ? Set.of() : unmeasured.stoodIn(history.stuckAt(), until),
                here.sourceOf(here.nextHour()),
                usable(ends[LAST], lastRate),
                List.copyOf(moves),
                record == null ? null : new Outlook.ByRecord(byModel, record.width(), record.batches()));
    }

    /** What the crop's record says at this lead; null if it says nothing, or the batch was seen ready. */
    private Calibration.@Nullable Knot record(long nowMillis, long medianMillis) {
        Calibration calibration = profile.calibration();
        return calibration.isNone() || path.isSeen(LAST)
                ? null
                : calibration.at((medianMillis - nowMillis) / DateSpread.DAY_MILLIS);
    }

    /** When it is ready by the model alone, whatever the record says: to be held against what is seen later. */
    public Foretold foretold() {
        return ahead().foretoldAsItStands();
    }

    private Foretold foretoldAsItStands() {
        long nowMillis = houses.asOf().toEpochMilli();
        StagePath.Dates dates = path.dates(rates);
        StageRates believed = believed(dates);
        dates = believed == rates ? dates : path.dates(believed);
        long[] ready = dates.ends()[LAST];
        widenReady(nowMillis, ready, StagePath.atNode(RateBelief.median(), dates.ends()));
        return new Foretold(nowMillis, ready, dates.lastRate(), profile.variation(), path.incompleteAt(LAST));
    }

    /** @param ends when nine cells in ten are through with the last stage, by node */
    private UsableTrays usable(long[] ends, RateBelief lastRate) {
        return new UsableTrays(
                CellTimes.of(path, lastRate, cellSpread, ends), fillable, Duration.ofDays(profile.holdDays()), shipped);
    }

    /** @param ends by node; changed in place */
    private void widenReady(long nowMillis, long[] ends, long[] medianEnds) {
        if (path.isSeen(LAST)) {
            Arrays.fill(ends, path.seenAt(LAST));
        } else {
            spread(nowMillis, LAST, medianEnds).widen(ends);
        }
    }

    /**
     * Of a stage that others follow, of which no more is told than these three dates. What the record says of ready moves them
     * alike, so stages stay in order.
     */
    private DateRange range(
            long nowMillis, int stage, long[] ends, long[] medianEnds, @Nullable RecordedRange recorded) {
        if (path.isSeen(stage)) {
            Instant seen = Instant.ofEpochMilli(path.seenAt(stage));
            return new DateRange(seen, seen, seen);
        }
        DateSpread spread = spread(nowMillis, stage, medianEnds);
        if (recorded == null) {
            return spread.widenedRange(ends);
        }
        spread.widen(ends);
        recorded.move(ends, earliest(stage));
        return DateDistribution.range(ends);
    }

    /** A stage that was not seen to end had not ended by then. */
    private long earliest(int stage) {
        return Math.max(lastSeenBefore(stage), path.incompleteAt(stage));
    }

    /** The stages between now and the end of one, each weighed by the time it takes; once that has passed, the last alone. */
    private DateSpread spread(long nowMillis, int last, long[] medianEnds) {
        double lead = medianEnds[last] - nowMillis;
        double logRatePerC = lead > 0 ? 0 : path.logRatePerC(last);
        for (int stage = 0; stage <= last && lead > 0; stage++) {
            double from = Math.max(nowMillis, path.startOf(stage, medianEnds));
            double share = Math.max(0, medianEnds[stage] - from) / lead;
            logRatePerC += share * path.logRatePerC(stage);
        }
        return new DateSpread(
                nowMillis,
                houses.spreadOf(history.houseAt(medianEnds[last])),
                logRatePerC,
                earliest(last),
                unmeasuredDays(nowMillis, last, medianEnds));
    }

    /** By the moment that they are counted to; null if there is no such hour. */
    private @Nullable LongToDoubleFunction unmeasuredDays(long nowMillis, int last, long[] medianEnds) {
        long since = lastSeenBefore(last);
        if (unmeasured.between(Instant.ofEpochMilli(since), Instant.ofEpochMilli(nowMillis)) == 0) {
            return null;
        }
        double before = 0;
        long begin = since;
        for (int stage = 0; stage < last && begin < nowMillis; stage++) {
            long end = Math.min(nowMillis, medianEnds[stage]);
            if (end > begin) {
                before += daysOff(stage, begin, end);
                begin = end;
            }
        }
        double earlierDays = before;
        long lastBegin = begin;
        double untilNow = earlierDays + daysOff(last, lastBegin, nowMillis);
        return until -> until >= nowMillis ? untilNow : earlierDays + daysOff(last, lastBegin, until);
    }

    private double daysOff(int stage, long from, long until) {
        return path.logRatePerC(stage) * unmeasured.degreeDays(Instant.ofEpochMilli(from), Instant.ofEpochMilli(until));
    }

    /** What happened before the last end that was seen does not matter to the dates to come. */
    private long lastSeenBefore(int stage) {
        long at = history.stuckAt().toEpochMilli();
        for (int earlier = 0; earlier < stage; earlier++) {
            at = path.isSeen(earlier) ? path.seenAt(earlier) : at;
        }
        return at;
    }

    /** Progress from one instant to another, both included, for a plot: actual so far, expected from there on. */
    public List<ProgressPoint> progress(Instant from, Instant until, Duration step) {
        BatchOutlook ahead = ahead();
        StagePath way = ahead.path;
        StageRates believed = ahead.believed();
        int[] nodes = {RateBelief.P10, RateBelief.median(), RateBelief.P90};
        double[][] multipliers = new double[nodes.length][];
        long[][] ends = new long[nodes.length][];
        for (int i = 0; i < nodes.length; i++) {
            multipliers[i] = believed.atNode(nodes[i]);
            ends[i] = way.ends(believed, nodes[i]);
        }
        List<ProgressPoint> points = new ArrayList<>();
        for (Instant at = from; !at.isAfter(until); at = at.plus(step)) {
            long millis = at.toEpochMilli();
            points.add(new ProgressPoint(
                    at,
                    way.progress(ends[0], multipliers[0], millis),
                    way.progress(ends[1], multipliers[1], millis),
                    way.progress(ends[2], multipliers[2], millis)));
        }
        return points;
    }
}
