package rootcast.feed;

import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;

/** Refuses what cannot be meant, with the numbers. */
final class Bounds {

    private Bounds() {}

    static void within(String field, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new FaultyValue(field, value, Fault.BETWEEN, least, most);
        }
    }

    static void over(String field, double value, double low, double most) {
        if (!(value > low && value <= most)) {
            throw new FaultyValue(field, value, Fault.OVER_AND_AT_MOST, low, most);
        }
    }
}
