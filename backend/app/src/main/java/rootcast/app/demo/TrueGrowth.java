package rootcast.app.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.Function;
import rootcast.crop.StageProfile;
import rootcast.outlook.DevelopmentRate;

/**
 * How a batch of the demo really develops, hour by hour, in the true medium temperature. The outlook never sees it; it
 * sees only what people of the demo noted and what the probes showed.
 *
 * @param rateFactor how much faster than its crop's profile this batch develops; 1 is as usual
 */
record TrueGrowth(MediumHistory medium, double rateFactor) {

    private static final double HOURS_PER_DAY = 24;

    /**
     * When {@code share} of a stage that began at {@code from} is done; empty if that lies beyond the simulated hours.
     *
     * @param houseAt where the batch stands at an instant
     */
    Optional<Instant> reaches(StageProfile stage, Instant from, double share, Function<Instant, String> houseAt) {
        DevelopmentRate rate = new DevelopmentRate(stage.cardinals());
        double progress = 0;
        Instant at = from;
        while (at.isBefore(medium.untilExclusive())) {
            Instant hourEnd = at.truncatedTo(ChronoUnit.HOURS).plus(1, ChronoUnit.HOURS);
            double hours = Duration.between(at, hourEnd).toMillis() / 3.6e6;
            double perHour = rateFactor
                    * rate.perDay(medium.mediumC(houseAt.apply(at), at))
                    / stage.daysAtReference()
                    / HOURS_PER_DAY;
            if (progress + perHour * hours >= share) {
                return Optional.of(at.plusMillis(Math.round((share - progress) / perHour * 3.6e6)));
            }
            progress += perHour * hours;
            at = hourEnd;
        }
        return Optional.empty();
    }
}
