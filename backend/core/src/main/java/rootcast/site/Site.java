package rootcast.site;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;

/**
 * A place with one time zone.
 *
 * @param code    short name, unique, never changed
 * @param shipDay day of the week that a board cell stands for
 */
public record Site(String code, String name, ZoneId zone, DayOfWeek shipDay) {

    /** The day at {@code instant} by this site's wall clock. */
    public LocalDate dayOf(Instant instant) {
        return LocalDate.ofInstant(instant, zone);
    }

    /** The first instant of {@code day} here. A zone that skips midnight starts its day an hour later. */
    public Instant startOf(LocalDate day) {
        return day.atStartOfDay(zone).toInstant();
    }

    public LocalDate shipDayOf(ShipWeek week) {
        return week.day(shipDay);
    }
}
