package rootcast.bench;

import java.util.concurrent.TimeUnit;
import org.openjdk.jmh.annotations.Benchmark;
import org.openjdk.jmh.annotations.BenchmarkMode;
import org.openjdk.jmh.annotations.Fork;
import org.openjdk.jmh.annotations.Measurement;
import org.openjdk.jmh.annotations.Mode;
import org.openjdk.jmh.annotations.OutputTimeUnit;
import org.openjdk.jmh.annotations.Scope;
import org.openjdk.jmh.annotations.Setup;
import org.openjdk.jmh.annotations.State;
import org.openjdk.jmh.annotations.Warmup;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.Outlook;
import rootcast.outlook.OutlookModel;
import rootcast.outlook.RateBelief;

/** One batch. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MICROSECONDS)
@Fork(
        value = 1,
        jvmArgsAppend = {"-Xms2g", "-Xmx2g", "-XX:+AlwaysPreTouch"})
@Warmup(iterations = 3, time = 2)
@Measurement(iterations = 5, time = 2)
public class OutlookBenchmark {

    private static final TrayFormat TRAY = new TrayFormat("T105", 105, 100, 540, 280);

    private Business business;
    private int next;

    @Setup
    public void open() {
        business = new Business(600);
        business.outlooks();
    }

    private int nextBatch() {
        next = (next + 1) % business.batches.size();
        return next;
    }

    /** A batch's outlook as the hours move on. */
    @Benchmark
    public Outlook outlookNow() {
        return business.kept.get(nextBatch()).now();
    }

    /** A batch's outlook after a new entry: belief, survivors and dates. */
    @Benchmark
    public Outlook outlookAfterAnEntry() {
        Business.Batch batch = business.batches.get(nextBatch());
        return BatchOutlook.of(batch.history(), batch.profile(), TRAY, business.houses)
                .now();
    }

    /** What was seen of a batch, made into a belief of its rate in a stage. */
    @Benchmark
    public RateBelief rateBelief() {
        Business.Batch batch = business.batches.get(nextBatch());
        return OutlookModel.rate(batch.history(), batch.profile(), business.houses, Stage.CALLUS);
    }
}
