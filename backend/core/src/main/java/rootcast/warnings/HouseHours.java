package rootcast.warnings;

/** The hours of one house as they were measured. */
@FunctionalInterface
public interface HouseHours {

    /**
     * Mean of the hour in the unit of {@code measured}; not a number where nothing was measured. Never a filled hour: a
     * warning must not rest on a guess.
     *
     * @param hour counted from 1970-01-01T00:00Z
     */
    double at(Measured measured, long hour);
}
