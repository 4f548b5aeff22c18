package rootcast.app.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Optional;
import java.util.function.Function;
import rootcast.crop.Cardinals;
import rootcast.crop.StageProfile;

/**
 * How a batch of the demo really develops, hour by hour, in the true medium temperature. The outlook never sees it; it
 * sees only what people of the demo noted and what the probes showed.
 *
 * <p>Source: beta function of the three cardinal temperatures, Yin et al. 1995 in the form of Yan and Hunt 1999.
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
        double referenceResponse = response(stage.cardinals(), stage.cardinals().referenceC());
        double progress = 0;
        Instant at = from;
        while (at.isBefore(medium.untilExclusive())) {
            Instant hourEnd = at.truncatedTo(ChronoUnit.HOURS).plus(1, ChronoUnit.HOURS);
            double hours = Duration.between(at, hourEnd).toMillis() / 3.6e6;
            double perHour = rateFactor
                    * response(stage.cardinals(), medium.mediumC(houseAt.apply(at), at))
                    / referenceResponse
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

    /** 0 at and beyond minimum and maximum, 1 at the optimum. */
    private static double response(Cardinals cardinals, double mediumC) {
        if (mediumC <= cardinals.minC() || mediumC >= cardinals.maxC()) {
            return 0;
        }
        double rise = (mediumC - cardinals.minC()) / (cardinals.optimumC() - cardinals.minC());
        double span = cardinals.maxC() - cardinals.optimumC();
        double exponent = (cardinals.optimumC() - cardinals.minC()) / span;
        return (cardinals.maxC() - mediumC) / span * Math.pow(rise, exponent);
    }
}
