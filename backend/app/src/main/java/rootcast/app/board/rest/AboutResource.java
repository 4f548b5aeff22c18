package rootcast.app.board.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.time.Instant;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import rootcast.app.board.LiveBoard;
import rootcast.app.wiring.RootcastConfig;

/** Which Rootcast this is. */
@Path("/api/about")
public class AboutResource {

    @Inject
    LiveBoard board;

    @Inject
    RootcastConfig config;

    @ConfigProperty(name = "quarkus.application.version")
    String version;

    record About(String version, Instant asOf, long position, boolean demo) {}

    @GET
    public About about() {
        return new About(version, board.asOf(), board.position().value(), config.demo());
    }
}
