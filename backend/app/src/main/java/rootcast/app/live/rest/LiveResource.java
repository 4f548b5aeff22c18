package rootcast.app.live.rest;

import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Multi;
import io.smallrye.mutiny.subscription.BackPressureStrategy;
import jakarta.inject.Inject;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.sse.OutboundSseEvent;
import jakarta.ws.rs.sse.Sse;
import java.time.InstantSource;
import java.util.Optional;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;
import rootcast.app.board.BoardView;
import rootcast.app.board.LiveBoard;
import rootcast.app.board.rest.BoardQuery;
import rootcast.app.once.FactHead;
import rootcast.app.people.Asking;
import rootcast.app.people.Caller;
import rootcast.app.people.Needs;
import rootcast.app.people.Right;
import rootcast.app.people.Sites;
import rootcast.app.problem.Problem;
import rootcast.app.snapshot.Snapshots;
import rootcast.facts.FactPosition;
import rootcast.saying.Fault;

/**
 * The live feed. Every event's id is the position it brings the screen to; a screen that comes back names the last one
 * it heard, on whichever node.
 *
 * <p>Source: WHATWG HTML, server-sent events; a browser sends {@code Last-Event-ID} by itself.
 */
@Path("/api/live")
@Needs(Right.READ)
public class LiveResource {

    /** A screen that reads more slowly than this is cut off; it comes back and hears what it missed. */
    private static final int MOST_UNREAD = 512;

    @Inject
    OpenScreens screens;

    @Inject
    LiveBoard board;

    @Inject
    Snapshots snapshots;

    @Inject
    FactHead head;

    @Inject
    Caller caller;

    @Inject
    InstantSource time;

    @GET
    @Blocking
    @Produces(MediaType.SERVER_SENT_EVENTS)
    public Multi<OutboundSseEvent> live(
            @RestQuery @Nullable String from,
            @RestQuery @Nullable String weeks,
            @RestQuery @Nullable String confidence,
            @RestQuery @Nullable String after,
            @HeaderParam("Last-Event-ID") @Nullable String lastEventId,
            @Context Sse sse) {
        BoardView view = BoardQuery.view(from, weeks, confidence, () -> board.currentWeek(null, time.instant()));
        Asking reader = caller.asking();
        Sites sites = caller.mayRead();
        Optional<FactPosition> heard = Optional.ofNullable(
                        lastEventId == null || lastEventId.isBlank() ? after : lastEventId)
                .map(LiveResource::position)
                .map(this::ofThisBusiness);
        return Multi.createFrom()
                .<OutboundSseEvent>emitter(
                        emitter -> {
                            Screen screen = new Screen(
                                    view,
                                    reader,
                                    sites,
                                    heard,
                                    event -> emitter.emit(outbound(sse, event)),
                                    emitter::complete);
                            emitter.onTermination(() -> screens.close(screen));
                            screens.open(screen);
                        },
                        BackPressureStrategy.BUFFER)
                .onOverflow()
                .buffer(MOST_UNREAD);
    }

    /** A position that no fact has was heard from another business: nothing of it is known here. */
    private FactPosition ofThisBusiness(FactPosition heard) {
        return snapshots.now().isAtLeast(heard) || head.last().position().compareTo(heard) >= 0
                ? heard
                : FactPosition.START;
    }

    private static OutboundSseEvent outbound(Sse sse, FeedEvent event) {
        OutboundSseEvent.Builder built = sse.newEventBuilder()
                .name(event.name())
                .mediaType(MediaType.TEXT_PLAIN_TYPE)
                .data(String.class, event.data());
        return (event.id().isEmpty() ? built : built.id(event.id())).build();
    }

    private static FactPosition position(String text) {
        try {
            return new FactPosition(Long.parseLong(text));
        } catch (NumberFormatException notAPosition) {
            throw Problem.malformed("after", Fault.NOT_A_POSITION);
        }
    }
}
