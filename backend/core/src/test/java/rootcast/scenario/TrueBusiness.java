package rootcast.scenario;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Stage;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchHistory.Look;
import rootcast.outlook.BatchHistory.Plants;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.WangEngel;

/**
 * A business whose truth the model does not know and which has another form than it.
 *
 * <p>Development follows Wang and Engel. Every cell runs at its own rate in each stage and begins the next stage when it
 * is through with its own, so that a batch's stage has no moment of beginning. Batches differ, stages of a batch differ
 * again. Set-points drift from week to week, weather comes through, sensors are out by a little, make noise and fall
 * silent, at times for days. People look at forty cells every so often, write some looks down, and count now and then.
 */
final class TrueBusiness {

    static final Instant START = Instant.parse("2024-09-02T00:00:00Z");
    static final int HOUSES = 8;
    static final double REFERENCE_C = 22;

    private static final double[] DAYS = {6.4, 9.1, 9.8};
    private static final WangEngel[] RESPONSE = {
        new WangEngel(6, 27, 37), new WangEngel(9, 26.5, 36), new WangEngel(4, 25.5, 37)
    };
    private static final double BATCH_SPREAD = 0.09;
    private static final double STAGE_SPREAD = 0.035;
    private static final double CELL_SPREAD = 0.11;
    private static final int CELLS = 200;
    private static final double[] SURVIVAL = {0.965, 0.955, 0.98};
    private static final double SURVIVAL_WEIGHT = 60;
    private static final Stage[] REACHED = {Stage.CALLUS, Stage.ROOT, Stage.READY};
    private static final long HOUR_MILLIS = 3_600_000;

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

        String houseCode() {
            return "H" + house;
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

    static final int TRAYS = 240;
    static final int STUCK_PLANTS = TRAYS * 105;

    final List<Batch> batches = new ArrayList<>();
    private final Random random;
    private final int hours;
    private final double[][] trueC;
    private final HourlySeries[] readings = new HourlySeries[HOUSES];

    /** By house and stage: development in reference-days up to each hour. */
    private final double[][][] developed = new double[HOUSES][RESPONSE.length][];

    TrueBusiness(long seed, int count) {
        random = new Random(seed);
        int days = count / 4 + 80;
        hours = days * 24;
        trueC = new double[HOUSES][hours];
        for (int house = 0; house < HOUSES; house++) {
            weather(house);
            measure(house);
            develop(house);
        }
        for (int i = 0; i < count; i++) {
            batches.add(grown(i));
        }
    }

    HouseCurves curves(Instant asOf) {
        var curves = new HouseCurves(asOf);
        for (int house = 0; house < HOUSES; house++) {
            curves.house("H" + house, readings[house], SetpointPlan.none());
        }
        return curves;
    }

    private void weather(int house) {
        double setpointC = 19.5 + 4.0 * house / (HOUSES - 1);
        double usualC = setpointC;
        double frontC = 0;
        double swingC = 0.5 + random.nextDouble();
        for (int hour = 0; hour < hours; hour++) {
            if (hour % (24 * 7) == 0) {
                setpointC += 0.35 * random.nextGaussian() + (usualC - setpointC) * 0.2;
            }
            frontC += -frontC / 96 + 0.09 * random.nextGaussian();
            trueC[house][hour] = setpointC + frontC + swingC * Math.sin((hour % 24 - 9) * Math.PI / 12);
        }
    }

    private void measure(int house) {
        readings[house] = new HourlySeries();
        double outC = 0.15 * random.nextGaussian();
        int silent = 0;
        for (int hour = 0; hour < hours; hour++) {
            if (silent > 0) {
                silent--;
            } else if (random.nextInt(700) == 0) {
                silent = random.nextInt(10) == 0 ? 24 + random.nextInt(96) : 1 + random.nextInt(24);
            }
            if (silent == 0) {
                readings[house].add(
                        START.plus(Duration.ofHours(hour)), trueC[house][hour] + outC + 0.3 * random.nextGaussian());
            }
        }
    }

    private void develop(int house) {
        for (int stage = 0; stage < RESPONSE.length; stage++) {
            double[] sum = new double[hours + 1];
            for (int hour = 0; hour < hours; hour++) {
                sum[hour + 1] = sum[hour]
                        + RESPONSE[stage].response(trueC[house][hour]) / RESPONSE[stage].response(REFERENCE_C) / 24;
            }
            developed[house][stage] = sum;
        }
    }

    private double developedBy(int house, int stage, double hour) {
        double[] sum = developed[house][stage];
        int i = (int) Math.min(hour, hours - 1);
        return sum[i] + (sum[i + 1] - sum[i]) * (hour - i);
    }

    /** Hours since the start at which so many reference-days have been added since {@code fromHour}. */
    private double hourOf(int house, int stage, double fromHour, double referenceDays) {
        double[] sum = developed[house][stage];
        double target = developedBy(house, stage, fromHour) + referenceDays;
        int i = Arrays.binarySearch(sum, target);
        int at = i >= 0 ? i : -i - 2;
        if (at >= hours) {
            throw new IllegalStateException("the weather ends before the batch is ready");
        }
        return at + (target - sum[at]) / (sum[at + 1] - sum[at]);
    }

    private Batch grown(int number) {
        int house = random.nextInt(HOUSES);
        double stuck = (number / 4) * 24 + 7 + random.nextInt(9);
        double batchRate = BATCH_SPREAD * random.nextGaussian();
        double[][] through = new double[RESPONSE.length][CELLS];
        double[] begins = new double[CELLS];
        Arrays.fill(begins, stuck);
        for (int stage = 0; stage < RESPONSE.length; stage++) {
            double log = batchRate + STAGE_SPREAD * random.nextGaussian();
            for (int cell = 0; cell < CELLS; cell++) {
                double days = DAYS[stage] * Math.exp(-log + CELL_SPREAD * random.nextGaussian());
                begins[cell] = hourOf(house, stage, begins[cell], days);
                through[stage][cell] = begins[cell];
            }
        }
        double[] ends =
                Arrays.stream(through).mapToDouble(TrueBusiness::nineInTen).toArray();
        int[] alive = new int[RESPONSE.length];
        int plants = STUCK_PLANTS;
        for (int stage = 0; stage < RESPONSE.length; stage++) {
            plants = (int) Math.round(plants * survival(SURVIVAL[stage]));
            alive[stage] = plants;
        }
        return seen("B%05d".formatted(number), house, stuck, through, ends, alive);
    }

    private static double nineInTen(double[] moments) {
        double[] sorted = moments.clone();
        Arrays.sort(sorted);
        return sorted[CELLS * 9 / 10 - 1];
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

    private Batch seen(String id, int house, double stuck, double[][] through, double[] ends, int[] alive) {
        Instant stuckAt = at(stuck);
        double everyHours = 24 * (1 + 2 * random.nextDouble());
        boolean writesLooks = random.nextInt(4) > 0;
        Map<Stage, Instant> reached = new EnumMap<>(Stage.class);
        List<Look> looks = new ArrayList<>();
        Plants counted = new Plants(stuckAt, STUCK_PLANTS);
        int stage = 0;
        double now = stuck + everyHours * random.nextDouble();
        while (stage < RESPONSE.length) {
            int there = 0;
            for (int i = 0; i < 40; i++) {
                there += through[stage][random.nextInt(CELLS)] <= now ? 1 : 0;
            }
            if (there >= 36) {
                reached.put(REACHED[stage], at(now));
                if (stage < 2 && random.nextBoolean()) {
                    counted = new Plants(at(now), alive[stage]);
                }
                stage++;
            } else if (writesLooks) {
                looks.add(new Look(at(now), REACHED[stage], 40, there));
            }
            now += everyHours;
        }
        var everything = new BatchHistory(
                stuckAt,
                reached,
                List.of(new BatchHistory.Placement("H" + house, stuckAt)),
                counted,
                List.of(),
                List.of(),
                null,
                looks);
        double[] last = through[2].clone();
        Arrays.sort(last);
        return new Batch(id, house, stuckAt, at(ends[2]), last, alive, everything);
    }

    private static Instant at(double hours) {
        return START.plusMillis(Math.round(hours * HOUR_MILLIS));
    }
}
