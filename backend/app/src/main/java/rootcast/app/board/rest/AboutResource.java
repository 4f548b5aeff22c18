package rootcast.app.board.rest;

import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.time.Instant;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.app.wiring.Invented;

/** Which Rootcast this is. */
@Path("/api/about")
public class AboutResource {

    @Inject
    Snapshots snapshots;

    @Inject
    Instance<Invented> invented;

    @ConfigProperty(name = "quarkus.application.version")
    String version;

    record About(String version, Instant asOf, long position, boolean demo) {}

    @GET
    public About about() {
        Snapshot now = snapshots.now();
        return new About(version, now.asOf(), now.position().value(), invented.isResolvable());
    }
}
