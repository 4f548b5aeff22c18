package rootcast.climate;

/**
 * Degree-days of one day from its lowest and highest temperature.
 *
 * <p>The day's course is a sine or a triangle through the two extremes; what lies above {@code lower} counts. At
 * {@code upper} warmth is cut off: horizontally (more adds nothing), intermediately (more takes away as much), or
 * vertically (nothing counts while above it). With DD(x) the area above x and S(x) the share of the day above x:
 * horizontal DD(L) − DD(U), intermediate DD(L) − 2·DD(U), vertical DD(L) − DD(U) − (U − L)·S(U).
 *
 * <p>Units: the same degree throughout, Celsius or Fahrenheit; the result is in its degree-days.
 *
 * <p>Source: sine Baskerville and Emin 1969, Ecology 50:514-517; cut-offs and triangle Zalom, Goodell, Wilson, Barnett
 * and Bentley 1983, University of California leaflet 21373.
 */
public record DegreeDays(Course course, CutOff cutOff, double lower, double upper) {

    public enum Course {
        SINE,
        TRIANGLE
    }

    public enum CutOff {
        HORIZONTAL,
        INTERMEDIATE,
        VERTICAL
    }

    public DegreeDays {
        if (!(lower < upper)) {
            throw new IllegalArgumentException("lower %s must be below upper %s".formatted(lower, upper));
        }
    }

    /**
     * The mean of the extremes, less {@code base}, and nothing if that is below it.
     *
     * <p>Source: McMaster and Wilhelm 1997, Agric. For. Meteorol. 87:291-300, method 1.
     */
    public static double ofClampedMean(double min, double max, double base) {
        requireOrder(min, max);
        return Math.max((min + max) / 2, base) - base;
    }

    /**
     * The mean of the extremes, each raised to {@code base} if below it, less {@code base}.
     *
     * <p>Source: McMaster and Wilhelm 1997, method 2.
     */
    public static double ofClampedExtremes(double min, double max, double base) {
        requireOrder(min, max);
        return (Math.max(min, base) + Math.max(max, base)) / 2 - base;
    }

    public double ofDay(double min, double max) {
        requireOrder(min, max);
        double aboveUpper = areaAbove(upper, min, max);
        double between = areaAbove(lower, min, max) - aboveUpper;
        return switch (cutOff) {
            case HORIZONTAL -> between;
            case INTERMEDIATE -> between - aboveUpper;
            case VERTICAL -> between - (upper - lower) * shareAbove(upper, min, max);
        };
    }

    private double areaAbove(double threshold, double min, double max) {
        double mean = (min + max) / 2;
        if (max <= threshold) {
            return 0;
        }
        if (min >= threshold) {
            return mean - threshold;
        }
        if (course == Course.TRIANGLE) {
            return (max - threshold) * (max - threshold) / (2 * (max - min));
        }
        double amplitude = (max - min) / 2;
        double crossing = Math.asin((threshold - mean) / amplitude);
        return ((mean - threshold) * (Math.PI / 2 - crossing) + amplitude * Math.cos(crossing)) / Math.PI;
    }

    private double shareAbove(double threshold, double min, double max) {
        if (max <= threshold) {
            return 0;
        }
        if (min >= threshold) {
            return 1;
        }
        if (course == Course.TRIANGLE) {
            return (max - threshold) / (max - min);
        }
        return 0.5 - Math.asin((2 * threshold - min - max) / (max - min)) / Math.PI;
    }

    private static void requireOrder(double min, double max) {
        if (!(min <= max)) {
            throw new IllegalArgumentException("lowest %s is above highest %s".formatted(min, max));
        }
    }
}
