package rootcast.scenario;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.IntStream;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.learning.BatchRecord;
import rootcast.learning.Learning;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchHistory.Plants;
import rootcast.outlook.HouseCurves;
import rootcast.site.Site;
import rootcast.trackrecord.CalibrationFit;
import rootcast.trackrecord.FinishedBatch;
import rootcast.trackrecord.Hindcast;

/**
 * A business whose truth the model does not know and which has another form than it.
 *
 * <p>Every cell runs at its own rate in each stage and begins the next stage when it is through with its own, so that a
 * batch's stage has no moment of beginning. Batches differ, stages of a batch differ again. Set-points drift from week to
 * week, weather comes through, sensors are out by a little, make noise and fall silent, at times for days. What is usual,
 * and what can be otherwise, stands in {@link Truth}.
 */
final class TrueBusiness {

    static final Instant START = Instant.parse("2024-09-02T00:00:00Z");
    static final double REFERENCE_C = 22;
    static final int TRAYS = 240;
    static final int STUCK_PLANTS = TRAYS * 105;

    private static final int STAGES = TrueHouses.STAGES;
    private static final double[] DAYS = {6.4, 9.1, 9.8};
    private static final double CELL_SPREAD = 0.11;
    private static final int CELLS = 200;
    private static final double[] SURVIVAL = {0.965, 0.955, 0.98};
    private static final double SURVIVAL_WEIGHT = 60;
    private static final long HOUR_MILLIS = 3_600_000;
    private static final double SEASON_HOURS = 24 * 120;
    private static final int LOT_BATCHES = 4;
    private static final int FOLDS = 4;

    /** The second stream of numbers goes its own way: this seed and the business's. */
    private static final long EXTRA_SEED = 0x5DEECE66DL;

    /**
     * @param ready when nine living cells in ten may leave
     * @param through    when each of some cells was through with its last stage, in hours since {@link #START}, rising
     * @param aliveAfter plants at the end of each stage
     */
    record Batch(
            String id,
            int house,
            Instant stuckAt,
            Instant ready,
            double[] through,
            int[] aliveAfter,
            BatchHistory everything) {

        /** Living plants that are through by then and have been for no longer than the hold days. */
        double usable(Instant then, int holdDays) {
            double hour = Duration.between(START, then).toMillis() / (double) HOUR_MILLIS;
            long cells = Arrays.stream(through)
                    .filter(at -> at <= hour && at >= hour - 24.0 * holdDays)
                    .count();
            return alive(2) * (double) cells / through.length;
        }

        int alive(int stage) {
            return aliveAfter[stage];
        }

        /** Plants by stage as the books have them in the end. */
        Map<Stage, BatchRecord.Lived> lived() {
            return Map.of(
                    Stage.STICK, new BatchRecord.Lived(STUCK_PLANTS, alive(0)),
                    Stage.CALLUS, new BatchRecord.Lived(alive(0), alive(1)),
                    Stage.ROOT, new BatchRecord.Lived(alive(1), alive(2)));
        }

        Instant seenReadyAt() {
            return everything.reachedAt().get(Stage.READY);
        }

        FinishedBatch finished(CropProfile profile, Site site) {
            return new FinishedBatch(
                    id,
                    "C",
                    site,
                    new TrayFormat("T105", 105, 100, 540, 280),
                    stuckAt,
                    seenReadyAt(),
                    seenReadyAt(),
                    everything.placements(),
                    new FinishedBatch.Then() {
                        @Override
                        public BatchHistory historyAt(Instant then) {
                            return by(then);
                        }

                        @Override
                        public CropProfile profileAt(Instant then) {
                            return profile;
                        }

                        @Override
                        public int plantsThereAt(Instant then) {
                            return alive(STAGES - 1);
                        }
                    });
        }

        /** What had been seen by then. */
        BatchHistory by(Instant then) {
            Map<Stage, Instant> reached = new EnumMap<>(Stage.class);
            everything.reachedAt().forEach((stage, at) -> {
                if (!at.isAfter(then)) {
                    reached.put(stage, at);
                }
            });
            Plants counted =
                    everything.base().at().isAfter(then) ? new Plants(stuckAt, STUCK_PLANTS) : everything.base();
            return new BatchHistory(
                    stuckAt,
                    reached,
                    everything.placements(),
                    counted,
                    List.of(),
                    List.of(),
                    null,
                    everything.looks().stream()
                            .filter(look -> !look.at().isAfter(then))
                            .toList());
        }
    }

    final List<Batch> batches = new ArrayList<>();
    private final Random random;
    private final Random extra;
    private final Truth truth;
    private final TrueHouses houses;
    private final TruePeople people;
    private double sickLoss;
    private int sickStage;

    TrueBusiness(long seed, int count) {
        this(seed, count, Truth.USUAL);
    }

    TrueBusiness(long seed, int count, Truth truth) {
        this.random = new Random(seed);
        this.extra = new Random(seed ^ EXTRA_SEED);
        this.truth = truth;
        int days = count / LOT_BATCHES + 80;
        this.houses = new TrueHouses(random, extra, days * 24, truth);
        this.people = new TruePeople(random, extra, truth);
        for (int i = 0; i < count; i++) {
            batches.add(grown(i));
        }
    }

    HouseCurves curves(Instant asOf) {
        return houses.curves(asOf);
    }

    /** What the business learns from some of its batches, beginning with what it states. */
    CropProfile learned(CropProfile stated, List<Batch> taught, Instant at) {
        HouseCurves curves = curves(at);
        List<BatchRecord> records = taught.stream()
                .map(batch ->
                        BatchRecord.of(batch.id(), "V", "S", batch.everything(), batch.lived(), curves, REFERENCE_C))
                .toList();
        return Learning.learn(stated, records, at).profile().forBatch("V", "S");
    }

    /**
     * The profile with what the record of these batches says of its ranges. Each is foretold by what was learned from three quarters of
     * them that it is not among.
     */
    CropProfile calibrated(CropProfile stated, CropProfile profile, List<Batch> taught, Site site, Instant at) {
        List<FinishedBatch> finished = new ArrayList<>();
        for (int fold = 0; fold < Math.min(FOLDS, taught.size()); fold++) {
            int leftOut = fold;
            List<Batch> others = IntStream.range(0, taught.size())
                    .filter(i -> i % FOLDS != leftOut)
                    .mapToObj(taught::get)
                    .toList();
            CropProfile without = learned(stated, others, at);
            for (int i = fold; i < taught.size(); i += FOLDS) {
                finished.add(taught.get(i).finished(without, site));
            }
        }
        HouseCurves curves = curves(START);
        return profile.calibrated(CalibrationFit.of(Hindcast.of(finished, moment -> {
            curves.advanceTo(moment);
            return curves;
        })));
    }

    /** Days at the reference temperature until nine cells in ten of a middling batch are through, by stage. */
    static double[] trueDays() {
        int cells = 20_000;
        var cellsOwn = new Random(1);
        double[] at = new double[cells];
        double[] days = new double[STAGES];
        double before = 0;
        for (int stage = 0; stage < STAGES; stage++) {
            for (int cell = 0; cell < cells; cell++) {
                at[cell] += DAYS[stage] * Math.exp(CELL_SPREAD * cellsOwn.nextGaussian());
            }
            double end = nineInTen(at);
            days[stage] = end - before;
            before = end;
        }
        return days;
    }

    private Batch grown(int number) {
        int house = random.nextInt(TrueHouses.HOUSES);
        double stuck = (number / LOT_BATCHES) * 24 + 7 + random.nextInt(9);
        double batchRate =
                truth.rates().batch() * random.nextGaussian() + truth.rates().season() * stuck / SEASON_HOURS;
        TrueHouses.Stay stay = stay(house, stuck);
        double[] tray = trays();
        double[][] through = new double[STAGES][CELLS];
        double[] begins = new double[CELLS];
        Arrays.fill(begins, stuck);
        for (int stage = 0; stage < STAGES; stage++) {
            double log = batchRate + truth.rates().stage() * random.nextGaussian();
            for (int cell = 0; cell < CELLS; cell++) {
                double ofTray = tray[cell / TruePeople.TRAY_CELLS];
                double days = DAYS[stage] * Math.exp(-log - ofTray + CELL_SPREAD * random.nextGaussian());
                begins[cell] = houses.hourOf(stay, stage, begins[cell], days);
                through[stage][cell] = begins[cell];
            }
        }
        double ready = nineInTen(through[STAGES - 1]);
        double[] lives = lives(number);
        int[] alive = new int[STAGES];
        int plants = STUCK_PLANTS;
        for (int stage = 0; stage < STAGES; stage++) {
            plants = (int) Math.round(plants * survival(SURVIVAL[stage]) * lives[stage]);
            alive[stage] = plants;
        }
        BatchHistory everything = people.seen(house, stuck, through, alive);
        double[] last = through[STAGES - 1].clone();
        Arrays.sort(last);
        return new Batch("B%05d".formatted(number), house, at(stuck), at(ready), last, alive, everything);
    }

    private TrueHouses.Stay stay(int house, double stuck) {
        boolean moves = happens(truth.floor().movedShare());
        return moves
                ? new TrueHouses.Stay(
                        house,
                        stuck + 24 * 20 * extra.nextDouble(),
                        (house + 1 + extra.nextInt(TrueHouses.HOUSES - 1)) % TrueHouses.HOUSES)
                : new TrueHouses.Stay(house, Double.POSITIVE_INFINITY, house);
    }

    private double[] trays() {
        double[] tray = new double[CELLS / TruePeople.TRAY_CELLS];
        if (truth.rates().tray() > 0) {
            Arrays.setAll(tray, i -> truth.rates().tray() * extra.nextGaussian());
        }
        return tray;
    }

    /** Share that lives through what befalls the batch, or its lot, at once in a stage. */
    private double[] lives(int number) {
        double[] lives = {1, 1, 1};
        if (happens(truth.floor().lossShare())) {
            lives[extra.nextInt(STAGES)] -= 0.1 + 0.2 * extra.nextDouble();
        }
        if (number % LOT_BATCHES == 0) {
            sickLoss = happens(truth.floor().sickShare()) ? 0.2 + 0.3 * extra.nextDouble() : 0;
            sickStage = sickLoss > 0 ? extra.nextInt(STAGES) : 0;
        }
        lives[sickStage] *= 1 - sickLoss;
        return lives;
    }

    private boolean happens(double share) {
        return share > 0 && extra.nextDouble() < share;
    }

    private static double nineInTen(double[] moments) {
        double[] sorted = moments.clone();
        Arrays.sort(sorted);
        return sorted[sorted.length * 9 / 10 - 1];
    }

    /** Beta by two gammas, each a sum of squared normals: its weight is whole. */
    private double survival(double mean) {
        double lives = gamma(mean * SURVIVAL_WEIGHT);
        return lives / (lives + gamma((1 - mean) * SURVIVAL_WEIGHT));
    }

    private double gamma(double shape) {
        double sum = 0;
        int whole = (int) shape;
        for (int i = 0; i < whole; i++) {
            sum -= Math.log(1 - random.nextDouble());
        }
        double rest = shape - whole;
        return sum + (rest < 1e-9 ? 0 : fractionalGamma(rest));
    }

    /** Ahrens and Dieter 1974, Computing 12:223-246, for shapes under one. */
    private double fractionalGamma(double shape) {
        while (true) {
            double p = (1 + shape / Math.E) * random.nextDouble();
            double x = p <= 1 ? Math.pow(p, 1 / shape) : -Math.log((1 + shape / Math.E - p) / shape);
            double accept = p <= 1 ? Math.exp(-x) : Math.pow(x, shape - 1);
            if (random.nextDouble() <= accept) {
                return x;
            }
        }
    }

    static Instant at(double hours) {
        return START.plusMillis(Math.round(hours * HOUR_MILLIS));
    }
}
