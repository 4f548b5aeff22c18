package rootcast.outlook;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Why a batch is ready when it is: the days that each cause moved the date by, from the plan to the date expected now.
 *
 * @param plannedAt as the profile of its sticking day had it, in houses at their set-points (that of the house it was
 *                  carried to once rooted from rooting on), or at each stage's reference temperature without one; {@link DateDistribution#NEVER} if that is too cold or too warm
 * @param readyAt   median date expected now, or the date seen
 * @param parts     in the order of their causes; they add up to the difference. Empty if either date is never
 */
public record DateExplanation(Instant plannedAt, Instant readyAt, List<Part> parts) {

    public enum Cause {
        /** The crop profile has another version now. */
        PROFILE_VERSION,
        /** The medium was warmer or cooler than planned. */
        TEMPERATURE,
        /** Hours without reading, as they were bridged. */
        GAP_FILLING,
        /** The hours to come are expected at another temperature than planned. */
        FORECAST,
        /** The batch is faster or slower than its crop, as looks and stages showed. */
        RATE_SEEN,
        /** Batches foretold like this were ready sooner or later than foretold. */
        OWN_RECORD
    }

    /**
     * @param days      later if positive
     * @param on        the day it happened, at the site; null if not one day
     * @param daysTaken how many days it sums up; 1 for one day, 0 if days do not apply
     * @param actualC   mean medium temperature of its hours; not a number if it is none of temperature
     * @param plannedC  what was planned for them; not a number likewise, and where each stage's reference was planned
     */
    public record Part(
            Cause cause, double days, @Nullable LocalDate on, int daysTaken, double actualC, double plannedC) {}

    public double differenceDays() {
        return parts.stream().mapToDouble(Part::days).sum();
    }
}
