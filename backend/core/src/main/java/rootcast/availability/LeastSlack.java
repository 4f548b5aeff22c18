package rootcast.availability;

/**
 * The least slack over all sets of ship dates that contain a given date, for every date at once.
 *
 * <p>Slack of a set S = trays usable on some date of S − trays promised on S. The trays that miss S lie inside the gaps
 * between its neighbouring dates, so {@code slack(S) = total − Σ gaps − Σ promised}, and the worst set through a date is
 * a longest path through it: one pass forward, one backward. Only dates with promises are worth a stop, because leaving
 * out a date without one lowers the capacity and not the promised trays. Of equally bad sets the one with fewest dates
 * is kept, being the easiest to explain.
 *
 * <p>Source: P. Hall, On representatives of subsets, J. London Math. Soc. 10 (1935); gaps: docs/models/availability.md.
 */
final class LeastSlack {

    final LotsAtConfidence lots;

    private final long[] promised;
    private final int[] stops;

    /** Longest path from before all dates to this one, its own promises included; the stop before it; its length. */
    private final long[] reached;

    private final int[] previous;
    private final int[] stopsSoFar;

    /** Longest path from this date to after all, its own promises excluded. */
    private final long[] ahead;

    private final int[] following;
    private final int[] stopsAhead;

    /**
     * @param promised trays by date number; indices 0 and {@code dates + 1} are 0
     */
    LeastSlack(LotsAtConfidence lots, long[] promised) {
        this.lots = lots;
        this.promised = promised;
        int width = lots.dates + 2;
        reached = new long[width];
        previous = new int[width];
        stopsSoFar = new int[width];
        ahead = new long[width];
        following = new int[width];
        stopsAhead = new int[width];
        stops = stops();
        forward();
        backward();
    }

    private int[] stops() {
        int count = 0;
        for (int date = 1; date <= lots.dates; date++) {
            count += promised[date] > 0 ? 1 : 0;
        }
        int[] found = new int[count];
        for (int date = lots.dates; date >= 1; date--) {
            if (promised[date] > 0) {
                found[--count] = date;
            }
        }
        return found;
    }

    private void forward() {
        leaveTowards(0);
        for (int stop : stops) {
            leaveTowards(stop);
        }
    }

    /** Offers every later date the path through {@code from}, whose own path is final by then. */
    private void leaveTowards(int from) {
        LotsAtConfidence.Gap gap = lots.gapAfter(from);
        for (int date = from + 1; date <= lots.dates; date++) {
            long path = reached[from] + gap.widenTo(date) + promised[date];
            boolean first = from == 0;
            if (first || path > reached[date] || path == reached[date] && stopsSoFar[from] + 1 < stopsSoFar[date]) {
                reached[date] = path;
                previous[date] = from;
                stopsSoFar[date] = stopsSoFar[from] + 1;
            }
        }
    }

    private void backward() {
        int end = lots.dates + 1;
        int nextStop = stops.length;
        for (int date = lots.dates; date >= 1; date--) {
            LotsAtConfidence.Gap gap = lots.gapAfter(date);
            long best = -1;
            int to = end;
            for (int s = nextStop; s <= stops.length; s++) {
                int stop = s == stops.length ? end : stops[s];
                long path = gap.widenTo(stop) + promised[stop] + ahead[stop];
                if (path > best || path == best && stopsAhead[stop] < stopsAhead[to]) {
                    best = path;
                    to = stop;
                }
            }
            ahead[date] = best;
            following[date] = to;
            stopsAhead[date] = stopsAhead[to] + 1;
            nextStop -= promised[date] > 0 ? 1 : 0;
        }
    }

    /** Negative if promises that count on the date cannot all be kept. */
    long at(int date) {
        return lots.total - reached[date] - ahead[date];
    }

    boolean everyPromiseFits() {
        for (int stop : stops) {
            if (at(stop) < 0) {
                return false;
            }
        }
        return true;
    }

    /** A set that attains {@link #at}, rising. */
    int[] worstSet(int date) {
        int[] set = new int[stopsSoFar[date] + stopsAhead[date] - 1];
        int next = stopsSoFar[date];
        for (int stop = date; stop != 0; stop = previous[stop]) {
            set[--next] = stop;
        }
        next = stopsSoFar[date];
        for (int stop = following[date]; stop <= lots.dates; stop = following[stop]) {
            set[next++] = stop;
        }
        return set;
    }

    long promisedOn(int[] set) {
        long sum = 0;
        for (int date : set) {
            sum += promised[date];
        }
        return sum;
    }
}
