package rootcast.app.once.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.util.List;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.once.SetupChange;
import rootcast.app.once.SetupLog;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.problem.Problem;
import rootcast.saying.Fault;

/** Who changed sites, houses, crops, recipes and the like, when and what. */
@Path("/api/setup-changes")
@Needs(Right.PEOPLE)
public class SetupChangeResource {

    private static final int MOST = 1_000;

    @Inject
    SetupLog log;

    /**
     * Newest first.
     *
     * @param text   a part of who, or of method and path
     * @param before the {@code id} of the last line shown, for those after it
     */
    @GET
    public List<SetupChange> all(
            @RestQuery @DefaultValue("") String text,
            @RestQuery @Nullable Long before,
            @RestQuery @DefaultValue("100") int limit) {
        if (limit < 1 || limit > MOST) {
            throw Problem.malformed("limit", Fault.BETWEEN, 1, MOST);
        }
        return log.before(before, text, limit);
    }
}
