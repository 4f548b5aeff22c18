package rootcast.climate;

import java.util.List;

/**
 * What a moisture probe shows at each of the levels 1 (dry) to 5 (free water on top), as found by hand in the tray it is
 * in.
 *
 * <p>Straight lines between. The scale has ends: a medium drier than the driest level is level 1, one wetter than the
 * wettest 5. Our own rule: probes differ with medium and depth, so no curve is taken from a publication.
 *
 * @param shown in the sensor's unit, after its offset; rising, as water content does, or falling, as tension does
 */
public record MoistureScale(List<Double> shown) {

    public static final int LEVELS = 5;

    public MoistureScale {
        shown = List.copyOf(shown);
        if (shown.size() != LEVELS || !goesOneWay(shown)) {
            throw new IllegalArgumentException(
                    "%s must be %d numbers that rise or fall all the way".formatted(shown, LEVELS));
        }
    }

    /** Whether every step from level to level goes up, or every one goes down. */
    public static boolean goesOneWay(List<Double> shown) {
        double way = Math.signum(shown.get(shown.size() - 1) - shown.get(0));
        for (int i = 1; i < shown.size(); i++) {
            if (!(way * (shown.get(i) - shown.get(i - 1)) > 0)) {
                return false;
            }
        }
        return true;
    }

    /** 1 to 5; not a number if {@code value} is none. */
    double level(double value) {
        if (Double.isNaN(value)) {
            return Double.NaN;
        }
        double way = Math.signum(shown.get(LEVELS - 1) - shown.get(0));
        int above = 1;
        while (above < LEVELS - 1 && way * (value - shown.get(above)) > 0) {
            above++;
        }
        double from = shown.get(above - 1);
        double part = (value - from) / (shown.get(above) - from);
        return Math.max(1, Math.min(above + part, LEVELS));
    }
}
