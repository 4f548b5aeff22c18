package rootcast.warnings;

import rootcast.climate.MoistAir;

/** How long the air of a house was drier than a limit. */
public final class DryAir {

    private DryAir() {}

    /** Hours whose vapour pressure deficit lay above the limit; hours without humidity or air temperature do not count. */
    public static int hours(HouseHours hours, double mostKpa, long fromInclusive, long untilExclusive) {
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
