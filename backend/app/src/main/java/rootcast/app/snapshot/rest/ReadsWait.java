package rootcast.app.snapshot.rest;

import jakarta.inject.Inject;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import java.time.Duration;
import java.util.List;
import org.jboss.resteasy.reactive.server.ServerRequestFilter;
import org.jboss.resteasy.reactive.server.ServerResponseFilter;
import org.jspecify.annotations.Nullable;
import rootcast.app.once.Commits;
import rootcast.app.once.PositionOfAnswer;
import rootcast.app.problem.Problem;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.app.wiring.RootcastConfig;
import rootcast.facts.FactPosition;
import rootcast.saying.Fault;

/**
 * Lets a read wait for what its asker knows to be written: the position it names as {@code atLeast}, and what this node
 * has acknowledged. Every answer tells its position in the header {@value #HEADER}: a write that of its commit, a read that
 * of the snapshot at least.
 */
class ReadsWait {

    static final String HEADER = "Rootcast-Position";

    /** Longest that a read waits for a position it asks for by name. */
    private static final Duration MOST = Duration.ofSeconds(5);

    /** Posts that are answered from the snapshot: what is due, and what would be. */
    private static final List<String> JUDGED_ON_THE_SNAPSHOT = List.of("/api/rounds", "/api/what-if");

    @Inject
    Snapshots snapshots;

    @Inject
    Commits commits;

    @Inject
    PositionOfAnswer written;

    @Inject
    RootcastConfig config;

    /** After the filter that asks for a right: nobody without one makes a thread wait. */
    @ServerRequestFilter(priority = Priorities.USER + 1)
    public void await(ContainerRequestContext request) {
        boolean isRead = request.getMethod().equals("GET");
        if (isRead
                || JUDGED_ON_THE_SNAPSHOT.stream().anyMatch(request.getUriInfo().getPath()::startsWith)) {
            waitForOwn();
        }
        if (!isRead) {
            return;
        }
        FactPosition wanted = position(request.getUriInfo().getQueryParameters().getFirst("atLeast"));
        if (wanted != null) {
            Snapshot now = snapshots.when(snapshot -> snapshot.isAtLeast(wanted), MOST);
            if (!now.isAtLeast(wanted)) {
                throw Problem.notThereYet(wanted.value(), now.position().value());
            }
        }
    }

    @ServerResponseFilter
    public void tell(ContainerRequestContext request, ContainerResponseContext response) {
        FactPosition of = request.getMethod().equals("GET") ? snapshots.now().position() : written.get();
        if (of != null) {
            response.getHeaders().putSingle(HEADER, of.value());
        }
    }

    /** Whoever finds that it takes too long spares the others the waiting; they are told how old their answer is. */
    private void waitForOwn() {
        FactPosition own = commits.own();
        if (!snapshots.atLeast(own, config.readsWait()).isAtLeast(own)) {
            snapshots.fallBehind();
        }
    }

    private static @Nullable FactPosition position(@Nullable String text) {
        if (text == null || text.isBlank()) {
            return null;
        }
        try {
            return new FactPosition(Long.parseLong(text));
        } catch (NumberFormatException notAPosition) {
            throw Problem.malformed("atLeast", Fault.NOT_A_POSITION);
        }
    }
}
