package rootcast.crop;

import java.util.List;

/**
 * Where a batch stands. A stage is named by what the cuttings have reached; it ends when 90 % of the living cells have
 * reached the next.
 */
public enum Stage {
    /** Stuck, forming callus. */
    STICK,
    /** Callused, forming roots. */
    CALLUS,
    /** Rooted, filling the cell and toning. */
    ROOT,
    /** A liner that may leave. */
    READY,
    /** Every plant has left the bench: shipped or lost. */
    SHIP;

    /** The stages that take time, in order: each has days and survival in the crop profile. */
    public static final List<Stage> GROWING = List.of(STICK, CALLUS, ROOT);

    public boolean isAfter(Stage other) {
        return compareTo(other) > 0;
    }
}
