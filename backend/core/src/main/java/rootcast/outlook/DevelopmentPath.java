package rootcast.outlook;

import java.util.List;
import rootcast.crop.Cardinals;

/** Development of one batch for one set of cardinals: the curve of each house it stood in, from the move on. */
final class DevelopmentPath {

    private final DevelopmentCurve[] curves;

    /** Begin of each placement, then the end of time. */
    private final long[] bounds;

    DevelopmentPath(List<BatchHistory.Placement> placements, Cardinals cardinals, HouseCurves houses) {
        int count = placements.size();
        curves = new DevelopmentCurve[count];
        bounds = new long[count + 1];
        for (int i = 0; i < count; i++) {
            var placement = placements.get(i);
            curves[i] = houses.curve(placement.house(), cardinals, placement.fromInclusive());
            bounds[i] = placement.fromInclusive().toEpochMilli();
        }
        bounds[count] = DevelopmentCurve.NEVER;
    }

    double logRatePerC() {
        return curves[curves.length - 1].logRatePerC();
    }

    double between(long fromMillis, long toMillis) {
        double sum = 0;
        for (int i = 0; i < curves.length; i++) {
            long from = Math.max(fromMillis, bounds[i]);
            long to = Math.min(toMillis, bounds[i + 1]);
            if (from < to) {
                sum += curves[i].between(from, to);
            }
        }
        return sum;
    }

    long reach(long fromMillis, double referenceDays) {
        return from(fromMillis).reach(referenceDays);
    }

    Start from(long fromMillis) {
        return new Start(fromMillis);
    }

    /** A time from which several amounts are to be gained. */
    final class Start {

        private final long fromMillis;
        private final long fromInLast;
        private final long picoInLast;

        private Start(long fromMillis) {
            this.fromMillis = fromMillis;
            int last = curves.length - 1;
            fromInLast = Math.max(fromMillis, bounds[last]);
            picoInLast = curves[last].picoAt(fromInLast);
        }

        boolean isAt(long millis) {
            return fromMillis == millis;
        }

        long reach(double referenceDays) {
            double left = referenceDays;
            int last = curves.length - 1;
            for (int i = 0; i < last; i++) {
                long from = Math.max(fromMillis, bounds[i]);
                if (from >= bounds[i + 1]) {
                    continue;
                }
                double given = curves[i].between(from, bounds[i + 1]);
                if (given >= left) {
                    return curves[i].reach(from, left);
                }
                left -= given;
            }
            return curves[last].reach(fromInLast, picoInLast, left);
        }
    }

    /** The path as it stands; it stays so when the curves are brought up to date, and any thread may ask it. */
    Moment moment() {
        DevelopmentCurve.Moment[] moments = new DevelopmentCurve.Moment[curves.length];
        for (int i = 0; i < moments.length; i++) {
            moments[i] = curves[i].moment();
        }
        return new Moment(moments, bounds);
    }

    /** Reference-days along the path as it was once. */
    static final class Moment {

        private static final double PICO = 1e12;

        private final DevelopmentCurve.Moment[] curves;
        private final long[] bounds;

        private Moment(DevelopmentCurve.Moment[] curves, long[] bounds) {
            this.curves = curves;
            this.bounds = bounds;
        }

        /** Gained since sticking; before it 0. */
        double daysBy(long millis) {
            long pico = 0;
            for (int i = 0; i < curves.length && bounds[i] < millis; i++) {
                pico += curves[i].picoAt(Math.min(millis, bounds[i + 1])) - curves[i].picoAt(bounds[i]);
            }
            return pico / PICO;
        }
    }
}
