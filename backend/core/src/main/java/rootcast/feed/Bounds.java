package rootcast.feed;

/** Refuses what cannot be meant, with the numbers. */
final class Bounds {

    private Bounds() {}

    static void within(String field, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new IllegalArgumentException(
                    "%s is %s; it must lie between %s and %s".formatted(field, value, least, most));
        }
    }

    static void over(String field, double value, double low, double most) {
        if (!(value > low && value <= most)) {
            throw new IllegalArgumentException(
                    "%s is %s; it must be over %s and at most %s".formatted(field, value, low, most));
        }
    }
}
