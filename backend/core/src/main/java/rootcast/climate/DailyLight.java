package rootcast.climate;

/**
 * The light that a day adds up to: daily light integral, mol/m²/d.
 *
 * <p>Source: the integral itself, photon flux density (µmol/m²/s) times time, over a million.
 */
public final class DailyLight {

    /** Outdoors at best 50 to 60 mol/m²/d fall; under a roof more is a fault of the sensor (practice, no source). */
    public static final double MOST_MOLES = 60;

    /** A gap of so many hours is bridged by a straight line; a longer one leaves the day without a figure. */
    private static final int SHORT_GAP_HOURS = 3;

    private static final double MICRO = 1e-6;

    private DailyLight() {}

    /** Of one hour at a mean flux density, mol/m². */
    public static double hourMoles(double photonFlux) {
        return photonFlux * HourlySeries.HOUR_SECONDS * MICRO;
    }

    /**
     * A day's integral.
     *
     * @param moles         not a number if more than three hours together have no reading
     * @param bridgedHours  hours that lie on a straight line between their neighbours
     */
    public record Day(double moles, int bridgedHours) {}

    /** Of the hours of one day; in the local time of the site a day has 23 to 25 of them. */
    public static Day of(HourlySeries light, long fromHourInclusive, long untilHourExclusive) {
        double moles = 0;
        int bridged = 0;
        for (long hour = fromHourInclusive; hour < untilHourExclusive; hour++) {
            boolean measured = light.isMeasured(hour);
            moles += hourMoles(measured ? light.meanC(hour) : acrossShortGap(light, hour));
            bridged += measured ? 0 : 1;
        }
        return new Day(moles, bridged);
    }

    private static double acrossShortGap(HourlySeries light, long hour) {
        long before = hour - 1;
        while (hour - before <= SHORT_GAP_HOURS && !light.isMeasured(before)) {
            before--;
        }
        long after = hour + 1;
        while (after - before - 1 <= SHORT_GAP_HOURS && !light.isMeasured(after)) {
            after++;
        }
        if (after - before - 1 > SHORT_GAP_HOURS || !light.isMeasured(before)) {
            return Double.NaN;
        }
        double from = light.meanC(before);
        return from + (light.meanC(after) - from) * (hour - before) / (after - before);
    }
}
