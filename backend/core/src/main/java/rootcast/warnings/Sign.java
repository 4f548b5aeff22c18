package rootcast.warnings;

import java.util.List;

/**
 * What one hour says of one mistake.
 *
 * @param value   the worse of what was seen, in the unit of the limit; not a number where there is none
 * @param limit   what it should have kept
 * @param unit    of both, by its UCUM code; empty where there is none
 * @param batches that it concerns
 */
record Sign(Level level, double value, double limit, String unit, List<String> batches) {

    enum Level {
        BAD,
        /** Inside the limit but within the margin: neither raises nor ends. */
        BETWEEN,
        FINE,
        /** Nothing was measured, or the hour does not count. */
        SILENT
    }

    static final Sign FINE = new Sign(Level.FINE, Double.NaN, Double.NaN, "", List.of());
    static final Sign SILENT = new Sign(Level.SILENT, Double.NaN, Double.NaN, "", List.of());

    static final String KPA = "kPa";
    static final String PERCENT = "%";
    static final String CELSIUS = "Cel";
    static final String UMOL = "umol/m2/s";
    static final String LEVEL = "{level}";
    static final String MS_PER_CM = "mS/cm";

    /** Bad without a value: something was not done, or not measured. */
    static Sign bad(List<String> batches) {
        return new Sign(Level.BAD, Double.NaN, Double.NaN, "", batches);
    }

    /** Bad above the limit, fine from {@code margin} below it. */
    static Sign above(double value, double limit, double margin, String unit, List<String> batches) {
        if (Double.isNaN(value)) {
            return SILENT;
        }
        Level level = value > limit ? Level.BAD : value > limit - margin ? Level.BETWEEN : Level.FINE;
        return new Sign(level, value, limit, unit, batches);
    }

    /** Bad below the limit, fine from {@code margin} above it. */
    static Sign below(double value, double limit, double margin, String unit, List<String> batches) {
        if (Double.isNaN(value)) {
            return SILENT;
        }
        Level level = value < limit ? Level.BAD : value < limit + margin ? Level.BETWEEN : Level.FINE;
        return new Sign(level, value, limit, unit, batches);
    }

    /** How far beyond the limit, as a share of it, so that degrees and kilopascals compare. */
    double excess() {
        return Math.abs(value - limit) / Math.max(Math.abs(limit), 1e-9);
    }

    /** The one that says more: bad before between before fine before silent. */
    Sign or(Sign other) {
        return level.compareTo(other.level) <= 0 ? this : other;
    }
}
