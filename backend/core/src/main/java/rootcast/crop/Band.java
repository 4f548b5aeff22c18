package rootcast.crop;

import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;

/**
 * A span of values, ends included, in the unit of whatever it is a band of.
 *
 * @param least negative infinity where there is no lower end
 * @param most  positive infinity where there is no upper end
 */
public record Band(double least, double most) {

    public Band {
        if (!(least <= most)) {
            throw new FaultyValue("least", least, Fault.NOT_RISING, least, most);
        }
        if (least == Double.POSITIVE_INFINITY || most == Double.NEGATIVE_INFINITY) {
            throw new FaultyValue("least", least, Fault.NO_VALUE_BETWEEN);
        }
    }

    public static Band atMost(double most) {
        return new Band(Double.NEGATIVE_INFINITY, most);
    }

    /** A value that is not a number lies in no band. */
    public boolean holds(double value) {
        return least <= value && value <= most;
    }
}
