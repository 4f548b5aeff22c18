package rootcast.app.learning.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.time.Instant;
import java.time.InstantSource;
import org.jboss.resteasy.reactive.RestPath;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.board.BoardView;
import rootcast.app.board.LiveBoard;
import rootcast.app.board.rest.BoardQuery;
import rootcast.app.learning.WeighVersion;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;

/** Asks what adopting a version would change, before anybody adopts it. */
@Path("/api/crops/{code}/profiles/{version}/weighed")
@Needs(Right.SET_UP)
public class WeighVersionResource {

    @Inject
    Rights rights;

    @Inject
    WeighVersion weighVersion;

    @Inject
    LiveBoard board;

    @Inject
    InstantSource time;

    /** Who may adopt may ask, and nobody else: the answer names customers of every site. */
    @GET
    public WeighedWire weigh(
            @RestPath String code,
            @RestPath int version,
            @RestQuery @Nullable String weeks,
            @RestQuery @Nullable String confidence) {
        rights.everywhere(Right.SET_UP);
        Instant now = time.instant();
        BoardView view = BoardQuery.view(null, weeks, confidence, () -> board.currentWeek(null, now));
        return WeighedWire.of(version, weighVersion.weigh(code, version, view, now), view.confidence());
    }
}
