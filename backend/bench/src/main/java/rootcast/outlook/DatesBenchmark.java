package rootcast.outlook;

import java.util.List;
import java.util.concurrent.TimeUnit;
import java.util.stream.IntStream;
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
import rootcast.bench.Business;

/**
 * An hour passes with a reading in all houses; the ready date of every batch follows at every node of its belief, once by
 * the houses' curves and once by summing each batch's own hours. Both give the same dates: that is checked first.
 */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(
        value = 1,
        jvmArgsAppend = {"-Xms4g", "-Xmx4g", "-XX:+AlwaysPreTouch"})
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
public class DatesBenchmark {

    private static final long SAME_MILLIS = 1_000;

    @Param({"6000", "60000"})
    public int batches;

    private Business business;
    private List<StagePath> paths;
    private List<StageRates> rates;

    @Setup
    public void open() {
        business = new Business(batches);
        paths = business.batches.stream()
                .map(batch -> new StagePath(batch.history(), batch.profile(), business.houses))
                .toList();
        rates = IntStream.range(0, batches)
                .mapToObj(i -> BatchOutlook.rates(
                        business.batches.get(i).history(),
                        business.batches.get(i).profile(),
                        paths.get(i)))
                .toList();
        List<long[]> byCurves = byCurves();
        business.houses.bringUpToDate();
        IntStream.range(0, batches).parallel().forEach(i -> {
            long[] byHours = byHours(i);
            for (int node = 0; node < RateBelief.NODES; node++) {
                if (Math.abs(byCurves.get(i)[node] - byHours[node]) > SAME_MILLIS) {
                    throw new IllegalStateException("batch %d at node %d: %d by curves, %d by hours"
                            .formatted(i, node, byCurves.get(i)[node], byHours[node]));
                }
            }
        });
    }

    @Benchmark
    public List<long[]> byCurves() {
        business.anHourPasses();
        business.houses.bringUpToDate();
        return IntStream.range(0, batches)
                .parallel()
                .mapToObj(i -> paths.get(i).endsTogether(rates.get(i))[StagePath.STAGES - 1])
                .toList();
    }

    @Benchmark
    public List<long[]> byHours() {
        business.anHourPasses();
        business.houses.bringUpToDate();
        return IntStream.range(0, batches).parallel().mapToObj(this::byHours).toList();
    }

    private long[] byHours(int i) {
        Business.Batch batch = business.batches.get(i);
        return HourByHour.ready(
                batch.history(),
                batch.profile(),
                rates.get(i),
                paths.get(i),
                business.houses.climateOf(batch.history().house()));
    }
}
