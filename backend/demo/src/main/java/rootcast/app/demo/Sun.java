package rootcast.app.demo;

import java.time.Instant;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;

/**
 * Radiation of a cloudless sky on the level, from the height of the sun alone.
 *
 * <p>Source: declination after Cooper 1969, {@code 23.45°·sin(360°·(284 + day)/365)}; clear sky after Haurwitz 1945,
 * {@code 1098·cos z·exp(−0.059/cos z)} W·m⁻². The equation of time (up to 16 minutes) is left out.
 *
 * @param latitudeDeg  north is positive
 * @param longitudeDeg east is positive
 */
record Sun(double latitudeDeg, double longitudeDeg) {

    private static final double DEGREES_PER_HOUR = 15;

    /** Global radiation under a clear sky, W·m⁻²; 0 with the sun at or below the horizon. */
    double clearSkyWPerM2(Instant at) {
        double sine = sineOfElevation(at);
        return sine <= 0 ? 0 : 1098 * sine * Math.exp(-0.059 / sine);
    }

    /** Sine of the sun's height, which is the cosine of its zenith angle. */
    double sineOfElevation(Instant at) {
        ZonedDateTime utc = at.atZone(ZoneOffset.UTC);
        double hourUtc = utc.toLocalTime().toSecondOfDay() / 3600.0;
        double hourAngle = Math.toRadians(DEGREES_PER_HOUR * (hourUtc - 12) + longitudeDeg);
        double declination = Math.toRadians(23.45 * Math.sin(Math.toRadians(360.0 * (284 + utc.getDayOfYear()) / 365)));
        double latitude = Math.toRadians(latitudeDeg);
        return Math.sin(latitude) * Math.sin(declination)
                + Math.cos(latitude) * Math.cos(declination) * Math.cos(hourAngle);
    }
}
