package rootcast.numerics;

import java.util.function.IntPredicate;

/** Binary search on a condition that is false up to some number and true from there on. */
public final class FirstTrue {

    private FirstTrue() {}

    /** The least number of the window for which {@code condition} holds; {@code untilExclusive} if for none. */
    public static int in(int fromInclusive, int untilExclusive, IntPredicate condition) {
        int low = fromInclusive;
        int high = untilExclusive;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (condition.test(middle)) {
                high = middle;
            } else {
                low = middle + 1;
            }
        }
        return low;
    }
}
