package rootcast.bench;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Param;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.TrayFormat;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.HouseCurves;
import rootcast.site.Site;
import rootcast.trackrecord.BackTest;
import rootcast.trackrecord.Case;
import rootcast.trackrecord.FinishedBatch;

/** A year of finished batches in 24 houses, each foretold again from seven leads. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 2, time = 3)
@Measurement(iterations = 3, time = 3)
public class BackTestBenchmark {

    private static final Instant START = Instant.parse("2025-01-06T00:00:00Z");
    private static final int HOUSES = 24;
    private static final int DAYS = 420;
    private static final TrayFormat TRAY = new TrayFormat("T105", 105, 100, 540, 280);
    private static final Site SITE = new Site("S", "South", ZoneOffset.UTC, DayOfWeek.MONDAY);

    private static final CropProfile PROFILE = new CropProfile(
            List.of(stage(Stage.STICK, 7, 27), stage(Stage.CALLUS, 9, 26), stage(Stage.ROOT, 10, 25)), 0.1, 14);

    @Param({"300", "3000"})
    public int batches;

    private final List<HourlySeries> series = new ArrayList<>();
    private final List<FinishedBatch> finished = new ArrayList<>();

    private static StageProfile stage(Stage stage, double days, double optimumC) {
        return new StageProfile(stage, days, new Cardinals(Cardinals.Form.BETA, 8, optimumC, 36, 22), 0.97, 150);
    }

    private record Known(BatchHistory whole) implements FinishedBatch.Then {

        @Override
        public BatchHistory historyAt(Instant at) {
            Map<Stage, Instant> reached = new EnumMap<>(Stage.class);
            whole.reachedAt().forEach((stage, when) -> {
                if (!when.isAfter(at)) {
                    reached.put(stage, when);
                }
            });
            return new BatchHistory(
                    whole.stuckAt(), reached, whole.placements(), whole.base(), List.of(), List.of(), null, List.of());
        }

        @Override
        public CropProfile profileAt(Instant at) {
            return PROFILE;
        }

        @Override
        public int plantsThereAt(Instant at) {
            return whole.base().plants();
        }
    }

    @Setup
    public void open() {
        for (int house = 0; house < HOUSES; house++) {
            var medium = new HourlySeries();
            for (int hour = 0; hour < DAYS * 24; hour++) {
                double swingC = 1.5 * Math.sin((hour % 24 - 9) * Math.PI / 12) + Math.sin(hour / 60.0 + house);
                medium.add(START.plus(Duration.ofHours(hour)), 21 + house % 3 + swingC);
            }
            series.add(medium);
        }
        for (int i = 0; i < batches; i++) {
            finished.add(batch(i));
        }
    }

    private FinishedBatch batch(int i) {
        Instant stuckAt = START.plus(Duration.ofMinutes(40L * 1440 + 340L * 1440 * i / batches));
        double pace = 1 + 0.02 * (i % 11 - 5);
        Instant callus = stuckAt.plus(minutes(7 * pace));
        Instant root = callus.plus(minutes(9 * pace));
        Instant ready = root.plus(minutes(10 * pace));
        var placements = List.of(new BatchHistory.Placement("H" + i % HOUSES, stuckAt));
        var history = new BatchHistory(
                stuckAt,
                Map.of(Stage.CALLUS, callus, Stage.ROOT, root, Stage.READY, ready),
                placements,
                new BatchHistory.Plants(stuckAt, 1_050),
                List.of(),
                List.of(),
                null,
                List.of());
        return new FinishedBatch(
                "B%05d".formatted(i), "C", SITE, TRAY, stuckAt, ready, ready, placements, new Known(history));
    }

    private static Duration minutes(double days) {
        return Duration.ofMinutes(Math.round(days * 1440));
    }

    @Benchmark
    public List<Case> record() {
        var houses = new HouseCurves(START);
        for (int house = 0; house < HOUSES; house++) {
            houses.house("H" + house, series.get(house), SetpointPlan.none());
        }
        return BackTest.of(finished, moment -> {
            houses.advanceTo(moment);
            return houses;
        });
    }
}
