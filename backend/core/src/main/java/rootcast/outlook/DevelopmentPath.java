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
}
