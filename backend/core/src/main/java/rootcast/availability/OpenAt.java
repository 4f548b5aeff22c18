package rootcast.availability;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** Ready and open trays of a cell on each date asked about, at one confidence. */
public final class OpenAt {

    private final ListedDates dates;

    /** The levels a new promise would count at, rising; the last is the confidence asked for. */
    private final LeastSlack[] levels;

    OpenAt(ListedDates dates, LeastSlack[] levels) {
        this.dates = dates;
        this.levels = levels;
    }

    /** Trays usable on {@code date} at the confidence, before promises. */
    public int ready(LocalDate date) {
        return levels[levels.length - 1].lots.ready(dates.numberOf(date));
    }

    /** The most that can be promised for {@code date}; 0 where the slack is negative. */
    public int open(LocalDate date) {
        int number = dates.numberOf(date);
        return Math.toIntExact(Math.max(0, tightest(number).at(number)));
    }

    /** The set of ship dates that makes {@link #open} what it is. */
    public Limit limit(LocalDate date) {
        int number = dates.numberOf(date);
        LeastSlack level = tightest(number);
        int[] set = level.worstSet(number);
        List<LocalDate> named = new ArrayList<>(set.length);
        for (int member : set) {
            named.add(dates.date(member));
        }
        long promised = level.promisedOn(set);
        return new Limit(
                level.lots.confidence,
                List.copyOf(named),
                Math.toIntExact(level.at(number) + promised),
                Math.toIntExact(promised));
    }

    /** Of equally tight levels the highest, which is the one asked for if it is among them. */
    private LeastSlack tightest(int number) {
        LeastSlack tightest = levels[levels.length - 1];
        for (int level = levels.length - 2; level >= 0; level--) {
            if (levels[level].at(number) < tightest.at(number)) {
                tightest = levels[level];
            }
        }
        return tightest;
    }
}
