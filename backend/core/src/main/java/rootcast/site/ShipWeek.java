package rootcast.site;

import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.format.DateTimeFormatter;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoUnit;
import java.time.temporal.IsoFields;
import java.util.regex.Pattern;

/**
 * The ISO 8601 week in which trays leave. Week 1 holds the year's first Thursday; weeks begin on Monday.
 *
 * <p>Source: ISO 8601-1:2019, week date, written {@code YYYY-Www}. The year is the week-based year, so 2027-01-03 lies
 * in 2026-W53.
 *
 * @param monday first day of the week
 */
public record ShipWeek(LocalDate monday) implements Comparable<ShipWeek> {

    private static final Pattern WRITTEN = Pattern.compile("(\\d{4})-W(\\d{2})");

    /** Strict, because the lenient form turns a week 53 that does not exist into week 1 of the next year. */
    private static final DateTimeFormatter WEEK_DATE =
            DateTimeFormatter.ISO_WEEK_DATE.withResolverStyle(ResolverStyle.STRICT);

    public ShipWeek {
        if (monday.getDayOfWeek() != DayOfWeek.MONDAY) {
            throw new IllegalArgumentException(monday + " is a " + monday.getDayOfWeek() + "; a week begins on Monday");
        }
    }

    public static ShipWeek of(LocalDate anyDay) {
        return new ShipWeek(anyDay.with(DayOfWeek.MONDAY));
    }

    /**
     * @throws IllegalArgumentException if the text is not {@code YYYY-Www} or that year has no such week
     */
    public static ShipWeek parse(String text) {
        if (!WRITTEN.matcher(text).matches()) {
            throw new IllegalArgumentException("'" + text + "' is not a week; write it as 2026-W48");
        }
        try {
            return new ShipWeek(LocalDate.parse(text + "-1", WEEK_DATE));
        } catch (DateTimeException noSuchWeek) {
            throw new IllegalArgumentException("'" + text + "' is not a week of that year", noSuchWeek);
        }
    }

    public LocalDate day(DayOfWeek day) {
        return monday.with(day);
    }

    public ShipWeek plusWeeks(long weeks) {
        return new ShipWeek(monday.plusWeeks(weeks));
    }

    /** Whole weeks from this one to {@code later}; negative if it is earlier. */
    public long weeksUntil(ShipWeek later) {
        return ChronoUnit.WEEKS.between(monday, later.monday);
    }

    @Override
    public int compareTo(ShipWeek other) {
        return monday.compareTo(other.monday);
    }

    @Override
    public String toString() {
        // A board of six thousand rows writes a hundred and fifty thousand of these: no format is read for each.
        String year = Integer.toString(monday.get(IsoFields.WEEK_BASED_YEAR));
        int week = monday.get(IsoFields.WEEK_OF_WEEK_BASED_YEAR);
        return "0".repeat(Math.max(0, 4 - year.length())) + year + (week < 10 ? "-W0" : "-W") + week;
    }
}
