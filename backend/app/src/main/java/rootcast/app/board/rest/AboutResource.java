package rootcast.app.board.rest;

import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.time.Instant;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import rootcast.app.board.LiveBoard;
import rootcast.app.wiring.Invented;

/** Which Rootcast this is. */
@Path("/api/about")
public class AboutResource {

    @Inject
    LiveBoard board;

    @Inject
    Instance<Invented> invented;

    @ConfigProperty(name = "quarkus.application.version")
    String version;

    record About(String version, Instant asOf, long position, boolean demo) {}

    @GET
    public About about() {
        return new About(version, board.asOf(), board.position().value(), invented.isResolvable());
    }
}
