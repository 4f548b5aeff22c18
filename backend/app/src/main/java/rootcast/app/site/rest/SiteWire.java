package rootcast.app.site.rest;

import jakarta.validation.constraints.NotBlank;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;
import rootcast.app.site.Code;
import rootcast.saying.Fault;
import rootcast.site.Site;

/**
 * A site as it is sent.
 *
 * @param timeZone IANA name, such as America/Chicago
 * @param shipDay  day that a board cell stands for; Monday if not given
 */
record SiteWire(
        @Code String code,
        @NotBlank @Size(max = 120) String name,
        @NotNull String timeZone,
        @Nullable DayOfWeek shipDay) {

    static SiteWire of(Site site) {
        return new SiteWire(site.code(), site.name(), site.zone().getId(), site.shipDay());
    }

    Site site() {
        try {
            return new Site(code, name.strip(), ZoneId.of(timeZone), shipDay == null ? DayOfWeek.MONDAY : shipDay);
        } catch (DateTimeException unknown) {
            throw Problem.notAllowed("timeZone", timeZone, Fault.NOT_A_TIME_ZONE);
        }
    }
}
