package rootcast.outlook;

import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rootcast.numerics.NormalShare;

/**
 * The trays of a batch that can leave, world by world: its date, how far its cells lie apart and how many plants live are what
 * they are there, so what {@link UsableAt} takes the mean over is one case.
 *
 * <p>Of n plants that live the number usable at a moment is binomial; it is taken as normal, at the same quantile at every
 * moment, since who is through early stays so. For one thread.
 */
public final class UsableIn {

    private final CellTimes cells;
    private final FillableTrays trays;
    private final long holdMillis;
    private final @Nullable Shipped shipped;
    private final String batch;
    private final String crop;
    private final SharedDoubt shared;

    /** Development by a moment is the same in every world. */
    private final Map<Long, Double> daysBy = new HashMap<>();

    UsableIn(
            CellTimes cells,
            FillableTrays trays,
            Duration hold,
            @Nullable Shipped shipped,
            String batch,
            String crop,
            SharedDoubt shared) {
        this.cells = cells;
        this.trays = trays;
        this.holdMillis = hold.toMillis();
        this.shipped = shipped;
        this.batch = batch;
        this.crop = crop;
        this.shared = shared;
    }

    /** Trays that can leave at each of the moments. */
    public int[] trays(World world, Instant[] leaves) {
        World.OfBatch place = world.of(batch, crop, shared);
        int slower = slowerNode(place.faster());
        int[] can = new int[leaves.length];
        if (cells.isNever(slower) || cells.isNever(slower + 1)) {
            return can;
        }
        double before = cells.slowerShare(slower);
        double part = (place.faster() - before) / (cells.slowerShare(slower + 1) - before);
        int factor = factor(place.cellsApart());
        int alive = trays.alive(place.alive());
        double then = shipped == null ? 0 : through(shipped.lastAt().toEpochMilli(), slower, part, factor);
        for (int i = 0; i < leaves.length; i++) {
            long at = leaves[i].toEpochMilli();
            double through = through(at, slower, part, factor);
            double past = through(at - holdMillis, slower, part, factor);
            double share = shipped == null
                    ? through - past
                    : shipped.usable(then, through, past).ofBench();
            double usable = alive * share + place.cells() * Math.sqrt(Math.max(0, alive * share * (1 - share)));
            can[i] = trays.filledBy((int) Math.max(0, Math.min(alive, usable + 0.5)));
        }
        return can;
    }

    private int slowerNode(double faster) {
        int node = 0;
        while (node < RateBelief.NODES - 2 && cells.slowerShare(node + 1) <= faster) {
            node++;
        }
        return node;
    }

    /** Number of the factor on the spread that this place among all batches has. */
    private static int factor(double place) {
        int factor = 0;
        double below = CellSpread.WEIGHTS[0];
        while (factor < CellSpread.WEIGHTS.length - 1 && place >= below) {
            factor++;
            below += CellSpread.WEIGHTS[factor];
        }
        return factor;
    }

    /** Share of the cells that are through by a moment. */
    private double through(long millis, int slower, double part, int factor) {
        double days = daysBy.computeIfAbsent(millis, cells::daysBy);
        double from = cells.z(slower, days, factor);
        return NormalShare.below(from + part * (cells.z(slower + 1, days, factor) - from));
    }
}
