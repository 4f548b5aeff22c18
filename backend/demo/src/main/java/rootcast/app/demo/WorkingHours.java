package rootcast.app.demo;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;

/** When people of a site are at work: Monday to Friday, 07:00 until 15:30 by the site's wall clock. */
record WorkingHours(ZoneId zone) {

    static final LocalTime START = LocalTime.of(7, 0);
    static final LocalTime END_EXCLUSIVE = LocalTime.of(15, 30);

    /** {@code at} itself if someone is at work then, otherwise the start of the next working day. */
    Instant notBefore(Instant at) {
        ZonedDateTime local = at.atZone(zone);
        LocalDate day = local.toLocalDate();
        if (isWorkday(day) && local.toLocalTime().isBefore(START)) {
            return at(day, START);
        }
        if (isWorkday(day) && local.toLocalTime().isBefore(END_EXCLUSIVE)) {
            return at;
        }
        return at(workdayNotBefore(day.plusDays(1)), START);
    }

    Instant at(LocalDate day, LocalTime time) {
        return day.atTime(time).atZone(zone).toInstant();
    }

    LocalDate dayOf(Instant at) {
        return LocalDate.ofInstant(at, zone);
    }

    static LocalDate workdayNotBefore(LocalDate day) {
        LocalDate found = day;
        while (!isWorkday(found)) {
            found = found.plusDays(1);
        }
        return found;
    }

    static LocalDate workdayNotAfter(LocalDate day) {
        LocalDate found = day;
        while (!isWorkday(found)) {
            found = found.minusDays(1);
        }
        return found;
    }

    static boolean isWorkday(LocalDate day) {
        return day.getDayOfWeek() != DayOfWeek.SATURDAY && day.getDayOfWeek() != DayOfWeek.SUNDAY;
    }
}
