package rootcast.learning;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.stream.DoubleStream;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.WangEngel;

/**
 * Batches whose truth is known and has another form than the model: Wang and Engel's response, cells that differ, houses
 * that drift around their set-point, noisy sensors with gaps, people who come round now and then.
 */
public final class SimulatedNursery {

    public static final Instant START = Instant.parse("2025-01-06T00:00:00Z");
    public static final double REFERENCE_C = 22;

    /** Days at 22 °C until nine cells in ten are through. */
    public static final double[] TRUE_DAYS = {7, 9, 10};

    private static final WangEngel[] RESPONSE = {
        new WangEngel(8, 27, 36), new WangEngel(10, 26, 35), new WangEngel(5, 25, 36)
    };
    private static final Stage[] REACHED = {Stage.CALLUS, Stage.ROOT, Stage.READY};

    /** Mean of √49/7, √130/9 and √230/10: by so much more than in one stage cells lie apart at the ends of stages. */
    private static final double MEAN_GROWTH = 1.2612;

    /** How the nursery is kept. */
    public record Manner(
            int batches,
            double rateSpread,
            double cellSpread,
            double[] setpointsC,
            double everyDays,
            boolean looksAreEntered,
            Map<String, Double> varietyRates) {

        public static Manner usual(int batches) {
            return new Manner(batches, 0.1, 0.12, new double[] {20, 22, 24}, 1, true, Map.of("V", 1.0));
        }

        public Manner rounds(double everyDays, boolean looksAreEntered) {
            return new Manner(batches, rateSpread, cellSpread, setpointsC, everyDays, looksAreEntered, varietyRates);
        }

        public Manner spreads(double rateSpread, double cellSpread) {
            return new Manner(batches, rateSpread, cellSpread, setpointsC, everyDays, looksAreEntered, varietyRates);
        }

        public Manner setpoints(double... setpointsC) {
            return new Manner(batches, rateSpread, cellSpread, setpointsC, everyDays, looksAreEntered, varietyRates);
        }

        public Manner varieties(Map<String, Double> varietyRates) {
            return new Manner(batches, rateSpread, cellSpread, setpointsC, everyDays, looksAreEntered, varietyRates);
        }
    }

    public record Batch(String id, String variety, BatchHistory history, Instant[] trueEnds, double rate) {}

    public final List<Batch> batches = new ArrayList<>();
    public final HouseCurves houses;
    public final Instant end;
    private final Map<String, double[]> trueC = new HashMap<>();
    private final Map<String, HourlySeries> series = new HashMap<>();
    private final Manner manner;
    private final Random random;

    /** Standard deviation of ln(a cell's time) in one stage; the manner's is the mean of what it comes to at the ends of stages. */
    private final double ofOneStage;

    private final double[] nineInTen;

    public SimulatedNursery(long seed, Manner manner) {
        this.random = new Random(seed);
        this.manner = manner;
        this.ofOneStage = manner.cellSpread / MEAN_GROWTH;
        this.nineInTen = nineInTen();
        int days = 80 + manner.batches * 3;
        this.end = START.plus(Duration.ofDays(days));
        for (int i = 0; i < manner.setpointsC.length; i++) {
            warm("H" + i, manner.setpointsC[i], days * 24);
        }
        this.houses = curves(end);
        List<String> varieties = manner.varietyRates.keySet().stream().sorted().toList();
        for (int i = 0; i < manner.batches; i++) {
            String variety = varieties.get(i % varieties.size());
            batches.add(grow("B%04d".formatted(i), variety, "H" + random.nextInt(manner.setpointsC.length), i * 3));
        }
    }

    /** A new set of curves over the same readings. */
    public HouseCurves curves(Instant asOf) {
        var curves = new HouseCurves(asOf);
        series.forEach((house, readings) -> curves.house(house, readings, SetpointPlan.of(null)));
        return curves;
    }

    /** A daily swing, weather that lasts some days, and a sensor that is out by up to 0.2 °C and silent at times. */
    private void warm(String house, double setpointC, int hours) {
        double[] celsius = new double[hours];
        var readings = new HourlySeries();
        double weatherC = 0;
        int silent = 0;
        for (int hour = 0; hour < hours; hour++) {
            weatherC += -weatherC / 72 + 0.12 * random.nextGaussian();
            celsius[hour] = setpointC + weatherC + 1.2 * Math.sin((hour % 24 - 9) * Math.PI / 12);
            silent = silent > 0 ? silent - 1 : random.nextInt(600) == 0 ? random.nextInt(20) : 0;
            if (silent == 0) {
                readings.add(START.plus(Duration.ofHours(hour)), celsius[hour] + 0.2 * random.nextGaussian());
            }
        }
        trueC.put(house, celsius);
        series.put(house, readings);
    }

    private Batch grow(String id, String variety, String house, int day) {
        Instant stuckAt = START.plus(Duration.ofDays(day)).plus(Duration.ofHours(7 + random.nextInt(9)));
        double rate = Math.exp(manner.rateSpread * random.nextGaussian()) * manner.varietyRates.get(variety);
        Instant[] ends = new Instant[3];
        Instant begin = stuckAt;
        for (int k = 0; k < 3; k++) {
            ends[k] = reach(house, k, begin, TRUE_DAYS[k] / rate);
            begin = ends[k];
        }
        Map<Stage, Instant> seen = new EnumMap<>(Stage.class);
        List<BatchHistory.Look> looks = new ArrayList<>();
        comeRound(house, stuckAt, ends, rate, seen, looks);
        var history = new BatchHistory(
                stuckAt,
                seen,
                List.of(new BatchHistory.Placement(house, stuckAt)),
                new BatchHistory.Plants(stuckAt, 1_050),
                List.of(),
                List.of(),
                null,
                looks);
        return new Batch(id, variety, history, ends, rate);
    }

    /** Of one cell to the end of a stage; it begins each stage when it is through with the one before, so its lead goes with it. */
    private double cellDays(int stage, Random own) {
        double days = 0;
        for (int k = 0; k <= stage; k++) {
            days += TRUE_DAYS[k] * Math.exp(ofOneStage * own.nextGaussian());
        }
        return days;
    }

    /** What makes nine cells in ten be through by the true days. */
    private double[] nineInTen() {
        var own = new Random(1);
        double[] factors = new double[3];
        double all = 0;
        for (int stage = 0; stage < 3; stage++) {
            int k = stage;
            double[] days = DoubleStream.generate(() -> cellDays(k, own))
                    .limit(20_001)
                    .sorted()
                    .toArray();
            all += TRUE_DAYS[stage];
            factors[stage] = all / days[18_000];
        }
        return factors;
    }

    /** Every so many days, at a time of its own for each batch, somebody looks at 50 cells for the next stage. */
    private void comeRound(
            String house,
            Instant stuckAt,
            Instant[] ends,
            double rate,
            Map<Stage, Instant> seen,
            List<BatchHistory.Look> looks) {
        if (manner.everyDays == 0) {
            for (int k = 0; k < 3; k++) {
                seen.put(REACHED[k], ends[k]);
            }
            return;
        }
        Duration every = Duration.ofMinutes(Math.round(manner.everyDays * 1440));
        Instant at = stuckAt.plus(every.multipliedBy(random.nextInt(1_000)).dividedBy(1_000));
        int stage = 0;
        while (stage < 3) {
            if (!at.isBefore(ends[stage])) {
                seen.put(REACHED[stage], at);
                stage++;
                continue;
            }
            if (manner.looksAreEntered) {
                Instant begin = stage == 0 ? stuckAt : ends[stage - 1];
                double days = rate * gained(house, stage, begin, at);
                for (int earlier = 0; earlier < stage; earlier++) {
                    days += TRUE_DAYS[earlier];
                }
                int reached = 0;
                for (int cell = 0; cell < 50; cell++) {
                    reached += cellDays(stage, random) * nineInTen[stage] <= days ? 1 : 0;
                }
                looks.add(new BatchHistory.Look(at, REACHED[stage], 50, Math.min(reached, 44)));
            }
            at = at.plus(every);
        }
    }

    private double perHour(String house, int stage, long hour) {
        double[] celsius = trueC.get(house);
        double at = celsius[(int) Math.min(hour, celsius.length - 1)];
        return RESPONSE[stage].response(at) / RESPONSE[stage].response(REFERENCE_C) / 24;
    }

    private Instant reach(String house, int stage, Instant begin, double days) {
        double left = days;
        double hours = hoursSinceStart(begin);
        while (true) {
            double rest = Math.floor(hours) + 1 - hours;
            double perHour = perHour(house, stage, (long) Math.floor(hours));
            if (perHour * rest >= left) {
                return START.plusMillis(Math.round((hours + left / perHour) * 3_600_000));
            }
            left -= perHour * rest;
            hours += rest;
        }
    }

    private double gained(String house, int stage, Instant begin, Instant at) {
        double sum = 0;
        double until = hoursSinceStart(at);
        for (double hours = hoursSinceStart(begin); hours < until; ) {
            double next = Math.min(Math.floor(hours) + 1, until);
            sum += perHour(house, stage, (long) Math.floor(hours)) * (next - hours);
            hours = next;
        }
        return sum;
    }

    private static double hoursSinceStart(Instant at) {
        return Duration.between(START, at).toMillis() / 3_600_000.0;
    }

    public List<BatchRecord> records() {
        return batches.stream()
                .map(batch ->
                        BatchRecord.of(batch.id, batch.variety, "S", batch.history, Map.of(), houses, REFERENCE_C))
                .toList();
    }

    /** The profile with days that are out by a factor, cardinals near the truth's and the given spread. */
    public static CropProfile profile(double factor, double rateSpread) {
        return new CropProfile(
                List.of(
                        stage(Stage.STICK, factor * TRUE_DAYS[0], 8, 27, 36),
                        stage(Stage.CALLUS, factor * TRUE_DAYS[1], 10, 26, 35),
                        stage(Stage.ROOT, factor * TRUE_DAYS[2], 5, 25, 36)),
                rateSpread,
                8);
    }

    private static StageProfile stage(Stage stage, double days, double minC, double optimumC, double maxC) {
        return new StageProfile(
                stage, days, new Cardinals(Cardinals.Form.BETA, minC, optimumC, maxC, REFERENCE_C), 0.97, 150);
    }

    /** What the batches of a nursery teach. */
    static LearnedProfile learned(long seed, Manner manner, CropProfile before) {
        var nursery = new SimulatedNursery(seed, manner);
        return Learning.learn(before, nursery.records(), nursery.end);
    }

    /** The learned days from sticking to ready over the true ones. */
    static double wholeRatio(LearnedProfile learned) {
        return learned.profile().stages().stream()
                        .mapToDouble(StageProfile::daysAtReference)
                        .sum()
                / 26;
    }
}
