package rootcast.app.board.rest;

import jakarta.enterprise.inject.Instance;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import java.time.Instant;
import org.eclipse.microprofile.config.inject.ConfigProperty;
import org.jspecify.annotations.Nullable;
import rootcast.app.people.FirstOwner;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.app.wiring.Invented;
import rootcast.app.wiring.RootcastConfig;

/** Which Rootcast this is. */
@Path("/api/about")
@Needs(Right.OPEN)
public class AboutResource {

    @Inject
    Snapshots snapshots;

    @Inject
    Instance<Invented> invented;

    @Inject
    RootcastConfig config;

    @Inject
    FirstOwner firstOwner;

    @ConfigProperty(name = "quarkus.oidc.tenant-enabled", defaultValue = "false")
    boolean oidc;

    @ConfigProperty(name = "quarkus.application.version")
    String version;

    /**
     * @param needsOwner whether nobody can sign in yet and the owner's account is to be made
     * @param oidc       whether one may sign in by a directory
     * @param business   what the business is called; null where nobody said
     */
    record About(
            String version,
            Instant asOf,
            long position,
            boolean demo,
            boolean needsOwner,
            boolean oidc,
            @Nullable String business) {}

    @GET
    public About about() {
        Snapshot now = snapshots.now();
        return new About(
                version,
                now.asOf(),
                now.position().value(),
                invented.isResolvable(),
                firstOwner.isNeeded(),
                oidc,
                config.business().orElse(null));
    }
}
