package rootcast.warnings;

import java.time.Instant;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZonedDateTime;

/**
 * Hours of the day in which nobody is to be told; what comes up in them is told when they end.
 *
 * @param from  by the site's clock, itself quiet
 * @param until itself not quiet; equal to {@code from} for no quiet hours at all, earlier for hours over midnight
 */
public record QuietHours(LocalTime from, LocalTime until) {

    public static final QuietHours NONE = new QuietHours(LocalTime.MIDNIGHT, LocalTime.MIDNIGHT);

    /** The first moment from {@code at} on at which people may be told. */
    public Instant tellAt(Instant at, ZoneId zone) {
        ZonedDateTime here = at.atZone(zone);
        if (!isQuiet(here.toLocalTime())) {
            return at;
        }
        ZonedDateTime end = here.toLocalDate().atTime(until).atZone(zone);
        return end.isAfter(here)
                ? end.toInstant()
                : here.toLocalDate().plusDays(1).atTime(until).atZone(zone).toInstant();
    }

    private boolean isQuiet(LocalTime clock) {
        boolean afterFrom = !clock.isBefore(from);
        boolean beforeUntil = clock.isBefore(until);
        return from.isAfter(until) ? afterFrom || beforeUntil : afterFrom && beforeUntil;
    }
}
