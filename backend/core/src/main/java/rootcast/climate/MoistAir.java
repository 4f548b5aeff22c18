package rootcast.climate;

/**
 * Water vapour in air: saturation pressure, deficit and dew point.
 *
 * <p>Units: °C, kPa, relative humidity in percent (over 0, up to 100).
 *
 * <p>Source: Allen, Pereira, Raes and Smith, FAO Irrigation and Drainage Paper 56 (1998), eq. 11 (saturation), 10 and 54
 * (humidity), 15 and 16 (psychrometer); dew point is eq. 11 solved for the temperature. Over water, also below 0 °C.
 */
public final class MoistAir {

    private static final double AT_ZERO_KPA = 0.6108;
    private static final double SLOPE = 17.27;
    private static final double OFFSET_C = 237.3;

    /** Coefficient of an aspirated psychrometer, per °C. */
    private static final double ASPIRATED_PER_C = 0.000662;

    private MoistAir() {}

    public static double saturationKpa(double airC) {
        return AT_ZERO_KPA * Math.exp(SLOPE * airC / (airC + OFFSET_C));
    }

    public static double vapourKpa(double airC, double humidityPercent) {
        if (!(humidityPercent > 0 && humidityPercent <= 100)) {
            throw new IllegalArgumentException(
                    "relative humidity %s %% must be over 0 and at most 100".formatted(humidityPercent));
        }
        return saturationKpa(airC) * humidityPercent / 100;
    }

    /** Vapour pressure by an aspirated psychrometer at the given air pressure. */
    public static double vapourByPsychrometerKpa(double dryC, double wetC, double pressureKpa) {
        return saturationKpa(wetC) - ASPIRATED_PER_C * pressureKpa * (dryC - wetC);
    }

    /** What the air could still take up. */
    public static double deficitKpa(double airC, double humidityPercent) {
        return saturationKpa(airC) - vapourKpa(airC, humidityPercent);
    }

    public static double dewPointC(double airC, double humidityPercent) {
        double ratio = Math.log(vapourKpa(airC, humidityPercent) / AT_ZERO_KPA);
        return OFFSET_C * ratio / (SLOPE - ratio);
    }
}
