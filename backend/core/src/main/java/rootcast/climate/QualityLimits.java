package rootcast.climate;

/**
 * How far readings of one quantity may go before they are flagged, in the quantity's unit; infinity switches a rule off.
 *
 * <p>Sources and marks of each figure: docs/models/climate-quality.md. Outdoor tables are too strict for a propagation
 * house: vents and mist make steps of several degrees, and humidity stands near 100 % for hours.
 *
 * @param step         change from the reading before, at most ten minutes earlier
 * @param spike        distance from the median of the readings around
 * @param disagreement distance of a sensor's hour from the others'
 * @param neverFlatTo  up to this value a constant reading is natural: darkness
 * @param neverFlatFrom from this value on a constant reading is natural: saturated air
 */
public record QualityLimits(double step, double spike, double disagreement, double neverFlatTo, double neverFlatFrom) {

    private static final double OFF = Double.POSITIVE_INFINITY;

    public static QualityLimits of(Quantity quantity) {
        return switch (quantity) {
            case MEDIUM_TEMPERATURE -> new QualityLimits(3, 4, 2, -OFF, OFF);
            case AIR_TEMPERATURE -> new QualityLimits(8, 6, 3, -OFF, OFF);
            case RELATIVE_HUMIDITY -> new QualityLimits(30, 25, 10, -OFF, 95);
            // Clouds, screens and lamps move light at will; only a sensor that never moves is odd.
            case LIGHT -> new QualityLimits(OFF, OFF, OFF, 1, OFF);
            // A level noted by hand stays what it is until somebody looks again.
            case MEDIUM_MOISTURE -> new QualityLimits(OFF, OFF, OFF, OFF, -OFF);
            case EC -> new QualityLimits(1, 1, 0.5, OFF, -OFF);
        };
    }

    boolean mayBeFlat(double value) {
        return value > neverFlatTo && value < neverFlatFrom;
    }
}
