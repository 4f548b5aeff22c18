package rootcast.scenario;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import rootcast.availability.LotOfBatch;
import rootcast.availability.SupplyLot;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.TrayFormat;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.Outlook;
import rootcast.site.Site;
import rootcast.trackrecord.Scores;

/**
 * Businesses of one truth forecast as a user would meet them: every batch on every day at six in the morning, by what had
 * been seen until then, and sorted by the days that the middling date lay ahead. No origin knows how it will end.
 */
final class Gallery {

    static final int[] LEADS_DAYS = {3, 7, 14};
    static final int HOLD_DAYS = 10;

    private static final double CONFIDENCE = 0.9;
    private static final double HALF_A_DAY = 0.5;
    private static final int ORIGIN_HOUR = 6;
    private static final int LIVE_DAYS = 45;
    private static final int STUCK_A_DAY = 4;
    private static final double DAY_MILLIS = 86_400_000;
    private static final double FURTHEST_DAYS = 60;
    private static final Site ANYWHERE = new Site("any", "Any", ZoneOffset.UTC, DayOfWeek.MONDAY);
    private static final TrayFormat TRAY = new TrayFormat("T105", 105, 100, 540, 280);
    private static final double[] TRUE_DAYS = TrueBusiness.trueDays();

    private final TrueBusiness business;
    private final String name;
    private final CropProfile profile;
    private final double calendarDays;
    private final Instant begin;
    private final List<GalleryCase> cases = new ArrayList<>();

    private Gallery(Truth truth, long seed, int forecast) {
        int taught = truth.known().finished();
        business = new TrueBusiness(seed, taught + LIVE_DAYS * STUCK_A_DAY + forecast, truth);
        name = truth.name() + " " + seed;
        List<TrueBusiness.Batch> finished = business.batches.subList(0, taught);
        begin = finished.stream()
                .map(TrueBusiness.Batch::seenReadyAt)
                .max(Comparator.naturalOrder())
                .orElse(TrueBusiness.START);
        CropProfile stated = stated(truth.known().daysFactor());
        profile = taught == 0
                ? stated
                : business.calibrated(stated, business.learned(stated, finished, begin), finished, ANYWHERE, begin);
        calendarDays = finished.stream()
                .mapToDouble(batch -> days(batch.stuckAt(), batch.ready()))
                .average()
                .orElse(stated.stages().stream()
                        .mapToDouble(StageProfile::daysAtReference)
                        .sum());
    }

    /** @param forecast batches of each business, those stuck first after the last one that was learned from was ready */
    static List<GalleryCase> of(Truth truth, long[] seeds, int forecast) {
        List<GalleryCase> cases = new ArrayList<>();
        for (long seed : seeds) {
            cases.addAll(new Gallery(truth, seed, forecast).walked(forecast));
        }
        return cases;
    }

    /** The profile as people state it: days out by a factor, cardinals near the truth's. */
    private static CropProfile stated(double daysFactor) {
        return new CropProfile(
                List.of(
                        stage(Stage.STICK, daysFactor * TRUE_DAYS[0], 8, 27),
                        stage(Stage.CALLUS, daysFactor * TRUE_DAYS[1], 10, 26),
                        stage(Stage.ROOT, daysFactor * TRUE_DAYS[2], 5, 25)),
                0.12,
                HOLD_DAYS);
    }

    private static StageProfile stage(Stage stage, double days, double minC, double optimumC) {
        var cardinals = new Cardinals(Cardinals.Form.BETA, minC, optimumC, 36, TrueBusiness.REFERENCE_C);
        return new StageProfile(stage, days, cardinals, 0.965, 60);
    }

    private List<GalleryCase> walked(int forecast) {
        List<TrueBusiness.Batch> live = business.batches.stream()
                .filter(batch -> batch.stuckAt().isAfter(begin))
                .limit(forecast)
                .toList();
        Instant last = live.stream()
                .map(TrueBusiness.Batch::seenReadyAt)
                .max(Comparator.naturalOrder())
                .orElseThrow();
        HouseCurves curves = business.curves(begin);
        Map<String, Known> known = new HashMap<>();
        Instant origin = ANYWHERE.startOf(ANYWHERE.dayOf(begin).plusDays(1)).plus(Duration.ofHours(ORIGIN_HOUR));
        for (; origin.isBefore(last); origin = origin.plus(Duration.ofDays(1))) {
            curves.advanceTo(origin);
            for (TrueBusiness.Batch batch : live) {
                if (batch.stuckAt().isBefore(origin) && batch.seenReadyAt().isAfter(origin)) {
                    BatchHistory history = batch.by(origin);
                    Known before = known.get(batch.id());
                    if (before == null || !before.history.equals(history)) {
                        before = new Known(history, BatchOutlook.of(history, profile, TRAY, curves));
                        known.put(batch.id(), before);
                    }
                    meet(batch, before.outlook.now());
                }
            }
        }
        return cases;
    }

    private record Known(BatchHistory history, BatchOutlook outlook) {}

    private void meet(TrueBusiness.Batch batch, Outlook outlook) {
        double ahead = daysTo(outlook.asOf(), outlook.readyAt().p50());
        for (int lead : LEADS_DAYS) {
            if (Math.abs(ahead - lead) <= HALF_A_DAY) {
                cases.add(seen(lead, batch, outlook));
            }
        }
    }

    private GalleryCase seen(int lead, TrueBusiness.Batch batch, Outlook outlook) {
        Instant now = outlook.asOf();
        double truth = days(now, batch.ready());
        double[] predicted = IntStream.of(5, 10, 50, 90, 95)
                .mapToDouble(percent -> daysTo(now, outlook.ready().quantile(percent / 100.0)))
                .toArray();
        double pinball = IntStream.of(1, 2, 3)
                .mapToDouble(i -> Scores.pinball(new double[] {0, 0.1, 0.5, 0.9}[i], predicted[i], truth))
                .average()
                .orElseThrow();
        double calendar = Math.max(0, days(now, batch.stuckAt()) + calendarDays);
        return new GalleryCase(
                lead,
                name + " " + batch.house(),
                predicted,
                truth,
                Math.abs(calendar - truth),
                pinball,
                outlook.saleableTrays().p10() <= batch.alive(2) / TRAY.saleCount(),
                promises(batch, outlook));
    }

    /** Whether all that the batch offers alone on its first, middle and last usable day could be filled; null if it offers none. */
    private static boolean @Nullable [] promises(TrueBusiness.Batch batch, Outlook outlook) {
        Optional<SupplyLot> lot = LotOfBatch.of(batch.id(), outlook, ANYWHERE);
        LocalDate first = lot.map(
                        each -> each.usableFrom(ANYWHERE.dayOf(outlook.asOf()).plusDays(1), CONFIDENCE))
                .orElse(null);
        if (first == null) {
            return null;
        }
        LocalDate last = lot.orElseThrow().usableUntilInclusive(CONFIDENCE);
        LocalDate middle = first.plusDays((last.toEpochDay() - first.toEpochDay()) / 2);
        boolean[] kept = new boolean[3];
        int i = 0;
        for (LocalDate day : List.of(first, middle, last)) {
            double plants = (double) lot.orElseThrow().traysAt(day, CONFIDENCE) * TRAY.saleCount();
            kept[i++] = batch.usable(ANYWHERE.startOf(day), HOLD_DAYS) >= plants;
        }
        return kept;
    }

    private static double daysTo(Instant from, Instant to) {
        return to.equals(DateDistribution.NEVER) ? FURTHEST_DAYS : Math.min(FURTHEST_DAYS, days(from, to));
    }

    private static double days(Instant from, Instant to) {
        return Duration.between(from, to).toMillis() / DAY_MILLIS;
    }
}
