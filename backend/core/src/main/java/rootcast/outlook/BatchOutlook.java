package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
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
        WidenedDates widened = widened(medianEnds);
        SharedDoubt shared = widened.shared(ends[LAST]);
        widened.ready(ends[LAST]);
        DateRange byModel = DateDistribution.range(ends[LAST]);
        Calibration.Knot record = widened.record();
        RecordedRange recorded = record == null ? null : new RecordedRange(record);
        RateBelief lastRate = dates.lastRate();
        if (recorded != null) {
            recorded.move(ends[LAST], widened.earliest(LAST));
            lastRate = recorded.rate(lastRate);
        }
        DateDistribution ready = new DateDistribution(rates.of(LAST), ends[LAST]);
        Instant until = history.reached(Stage.READY).orElse(asOf);
        int missing = unmeasured.between(history.stuckAt(), until);
        FilledSeries here = houses.climateOf(history.houseAt(nowMillis));
        return new Outlook(
                asOf,
                widened.range(0, ends[0], recorded),
                widened.range(1, ends[1], recorded),
                ready.range(),
                ready,
                saleable,
                survivors.expectedAlive(path.doneOfEach(medianEnds, believed.atNode(RateBelief.median()), asOf)),
                missing,
                missing == 0 ? Set.of() : unmeasured.stoodIn(history.stuckAt(), until),
                here.sourceOf(here.nextHour()),
                usable(ends[LAST], lastRate),
                shared,
                List.copyOf(moves),
                record == null ? null : new Outlook.ByRecord(byModel, record.width(), record.batches()));
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
        widened(StagePath.atNode(RateBelief.median(), dates.ends())).ready(ready);
        return new Foretold(nowMillis, ready, dates.lastRate(), profile.variation(), path.incompleteAt(LAST));
    }

    private WidenedDates widened(long[] medianEnds) {
        return new WidenedDates(history, profile, houses, path, unmeasured, medianEnds);
    }

    /** @param ends when nine cells in ten are through with the last stage, by node */
    private UsableTrays usable(long[] ends, RateBelief lastRate) {
        return new UsableTrays(
                CellTimes.of(path, lastRate, cellSpread, ends), fillable, Duration.ofDays(profile.holdDays()), shipped);
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
