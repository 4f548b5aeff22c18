package rootcast.availability;

import java.time.LocalDate;
import java.util.Arrays;
import java.util.Collection;
import java.util.List;

/**
 * The dates that matter for a cell, rising: those a promise is due on and those that were asked about.
 *
 * <p>Numbered from 1; 0 stands for "before all" and {@code count() + 1} for "after all".
 */
final class ListedDates {

    private final long[] epochDays;
    private final LocalDate[] dates;

    private ListedDates(long[] epochDays) {
        this.epochDays = epochDays;
        this.dates = new LocalDate[epochDays.length];
        for (int i = 0; i < dates.length; i++) {
            dates[i] = LocalDate.ofEpochDay(epochDays[i]);
        }
    }

    static ListedDates of(List<Promise> promises, Collection<LocalDate> asked, LocalDate today) {
        long[] days = new long[promises.size() + asked.size()];
        int next = 0;
        for (Promise promise : promises) {
            days[next++] = promise.dueOn(today).toEpochDay();
        }
        for (LocalDate date : asked) {
            if (date.isBefore(today)) {
                throw new IllegalArgumentException("nothing can ship on %s, today is %s".formatted(date, today));
            }
            days[next++] = date.toEpochDay();
        }
        Arrays.sort(days);
        int kept = 0;
        for (int i = 0; i < days.length; i++) {
            if (i == 0 || days[i] != days[i - 1]) {
                days[kept++] = days[i];
            }
        }
        return new ListedDates(Arrays.copyOf(days, kept));
    }

    int count() {
        return epochDays.length;
    }

    LocalDate date(int number) {
        return dates[number - 1];
    }

    /**
     * @throws IllegalArgumentException if the date is not listed
     */
    int numberOf(LocalDate date) {
        int found = Arrays.binarySearch(epochDays, date.toEpochDay());
        if (found < 0) {
            throw new IllegalArgumentException(date + " was not asked about");
        }
        return found + 1;
    }
}
