package rootcast.app.live.rest;

import java.util.Optional;
import java.util.function.Consumer;
import rootcast.app.board.BoardView;
import rootcast.app.people.Asking;
import rootcast.app.people.Sites;
import rootcast.facts.FactPosition;

/**
 * An open screen.
 *
 * @param view  what its board shows
 * @param reader who looks at it
 * @param sites what its reader may see
 * @param heard the last position it heard here or on another node; empty for a new one
 * @param send  gives it an event without waiting for it
 * @param end   closes it, when its reader is no longer signed in
 */
record Screen(
        BoardView view,
        Asking reader,
        Sites sites,
        Optional<FactPosition> heard,
        Consumer<FeedEvent> send,
        Runnable end) {}
