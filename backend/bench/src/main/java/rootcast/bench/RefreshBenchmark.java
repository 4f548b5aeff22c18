package rootcast.bench;

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
import rootcast.board.BoardRow;
import rootcast.outlook.Outlook;

/** An hour passes with a reading in all 240 houses; every outlook and every row follows. */
@State(Scope.Benchmark)
@BenchmarkMode(Mode.AverageTime)
@OutputTimeUnit(TimeUnit.MILLISECONDS)
@Fork(1)
@Warmup(iterations = 3, time = 3)
@Measurement(iterations = 5, time = 3)
public class RefreshBenchmark {

    @Param({"6000", "60000"})
    public int batches;

    private Business business;
    private double[] multipliers;

    @Setup
    public void open() {
        business = new Business(batches);
        // As many as the outlook reckons with, over the same range.
        multipliers = IntStream.range(0, 41)
                .mapToDouble(node -> Math.exp(0.1 * (node - 20) * 0.2136))
                .toArray();
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

    /** Dates only, no saleable trays, no board. */
    @Benchmark
    @Measurement(iterations = 2, time = 3)
    @Warmup(iterations = 1, time = 3)
    public List<long[]> naiveDates() {
        business.anHourPasses();
        business.houses.settle();
        return business.batches.parallelStream()
                .map(batch -> NaiveDates.ready(
                        batch.history(),
                        batch.profile(),
                        business.houses.climateOf(batch.history().house()),
                        multipliers))
                .toList();
    }
}
