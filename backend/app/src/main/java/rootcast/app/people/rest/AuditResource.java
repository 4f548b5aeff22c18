package rootcast.app.people.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.time.Duration;
import java.time.Instant;
import java.time.InstantSource;
import java.time.OffsetDateTime;
import java.time.format.DateTimeParseException;
import java.util.List;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.people.Audit;
import rootcast.app.people.AuditLine;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.problem.Problem;
import rootcast.saying.Fault;

/** What was refused, and what was changed of people, keys and passwords. */
@Path("/api/audit")
@Needs(Right.PEOPLE)
public class AuditResource {

    private static final int MOST = 1_000;

    @Inject
    Audit audit;

    @Inject
    InstantSource time;

    /** Newest first. @param before the {@code at} of the last line shown, for those after it */
    @GET
    public List<AuditLine> all(@RestQuery @Nullable String before, @RestQuery @DefaultValue("100") int limit) {
        if (limit < 1 || limit > MOST) {
            throw Problem.malformed("limit", Fault.BETWEEN, 1, MOST);
        }
        return audit.before(before == null ? time.instant().plus(Duration.ofDays(1)) : instant(before), limit);
    }

    private static Instant instant(String text) {
        try {
            return OffsetDateTime.parse(text).toInstant();
        } catch (DateTimeParseException notATime) {
            throw Problem.malformed("before", Fault.NOT_AN_INSTANT);
        }
    }
}
