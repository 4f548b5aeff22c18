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
            Instant hourEnd = nextHour(at);
            double hours = Duration.between(at, hourEnd).toMillis() / 3.6e6;
            double perHour = perHour(stage, rate, at, houseAt);
            if (progress + perHour * hours >= share) {
                return Optional.of(at.plusMillis(Math.round((share - progress) / perHour * 3.6e6)));
            }
            progress += perHour * hours;
            at = hourEnd;
        }
        return Optional.empty();
    }

    /** Share of the stage done at {@code until}, over 1 once it is past; both within the simulated hours. */
    double done(StageProfile stage, Instant from, Instant until, Function<Instant, String> houseAt) {
        DevelopmentRate rate = new DevelopmentRate(stage.cardinals());
        double progress = 0;
        for (Instant at = from; at.isBefore(until); at = nextHour(at)) {
            Instant end = nextHour(at).isBefore(until) ? nextHour(at) : until;
            progress += perHour(stage, rate, at, houseAt)
                    * Duration.between(at, end).toMillis()
                    / 3.6e6;
        }
        return progress;
    }

    private double perHour(StageProfile stage, DevelopmentRate rate, Instant at, Function<Instant, String> houseAt) {
        return rateFactor
                * rate.perDay(medium.mediumC(houseAt.apply(at), at))
                / stage.daysAtReference()
                / HOURS_PER_DAY;
    }

    private static Instant nextHour(Instant at) {
        return at.truncatedTo(ChronoUnit.HOURS).plus(1, ChronoUnit.HOURS);
    }
}
