package rootcast.warnings;

import rootcast.climate.MoistAir;

/** How long the air of a house was drier than a limit. */
public final class DryAir {

    public static final int DAY_HOURS = 24;

    /** So many dry hours of a day ask for another look at the moisture. Common practice, no source. */
    private static final int DRY_HOURS = 3;

    private DryAir() {}

    /** Whether the last day was dry for some hours; {@code untilExclusive} is the hour that is still running. */
    public static boolean wasDry(HouseHours hours, double mostKpa, long untilExclusive) {
        return hours(hours, mostKpa, untilExclusive - DAY_HOURS, untilExclusive) >= DRY_HOURS;
    }

    /** Hours whose vapour pressure deficit lay above the limit; hours without humidity or air temperature do not count. */
    static int hours(HouseHours hours, double mostKpa, long fromInclusive, long untilExclusive) {
        int dry = 0;
        for (long hour = fromInclusive; hour < untilExclusive; hour++) {
            double humidityPercent = hours.at(Measured.HUMIDITY_PERCENT, hour);
            if (humidityPercent > 0 && humidityPercent <= 100) {
                dry += MoistAir.deficitKpa(hours.at(Measured.AIR_C, hour), humidityPercent) > mostKpa ? 1 : 0;
            }
        }
        return dry;
    }
}
