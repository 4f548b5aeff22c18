package rootcast.bench;

import java.util.List;
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
import rootcast.board.BoardRow;
import rootcast.outlook.Outlook;

/** An hour passes with a reading in all 240 houses; every outlook and every row follows. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
// A heap that is there from the start: growing it would be measured with whatever came first.
@Fork(
        value = 1,
        jvmArgsAppend = {"-Xms4g", "-Xmx4g", "-XX:+AlwaysPreTouch"})
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
public class RefreshBenchmark {

    @Param({"6000", "60000"})
    public int batches;

    private Business business;

    @Setup
    public void open() {
        business = new Business(batches);
    }

    /** The hour alone: every curve of every crop in every house. */
    @Benchmark
    public void curves() {
        business.anHourPasses();
        business.houses.bringUpToDate();
    }

    @Benchmark
    public List<Outlook> outlooks() {
        business.anHourPasses();
        return business.outlooks();
    }

    @Benchmark
    public List<BoardRow> outlooksAndBoard() {
        business.anHourPasses();
        return business.board(business.outlooks());
    }
}
