package rootcast.app.demo;

import java.time.Duration;
import java.time.Instant;

/**
 * Share of the clear-sky radiation that comes through the clouds of an invented sky: a seeded value every six hours,
 * straight lines between them. Not weather data.
 */
record CloudCover(long seed, String site) {

    private static final long KNOT_SECONDS = Duration.ofHours(6).toSeconds();
    private static final double DULLEST_SHARE = 0.2;

    /** Between {@link #DULLEST_SHARE} and 1. */
    double passedShare(Instant at) {
        long knot = Math.floorDiv(at.getEpochSecond(), KNOT_SECONDS);
        double within = (double) Math.floorMod(at.getEpochSecond(), KNOT_SECONDS) / KNOT_SECONDS;
        return (1 - within) * atKnot(knot) + within * atKnot(knot + 1);
    }

    private double atKnot(long knot) {
        double draw = SeededDraw.of(seed, "cloud " + site, knot).nextDouble();
        return DULLEST_SHARE + (1 - DULLEST_SHARE) * draw;
    }
}
