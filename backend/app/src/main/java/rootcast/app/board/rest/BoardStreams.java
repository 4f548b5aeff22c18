package rootcast.app.board.rest;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Consumer;
import rootcast.app.board.BoardChanges;
import rootcast.app.board.BoardView;
import rootcast.app.board.LiveBoard;
import rootcast.app.board.Screens;
import rootcast.app.warnings.WarningsChanged;
import rootcast.availability.Cell;
import rootcast.facts.FactPosition;

/**
 * The open screens and what they have been told.
 *
 * <p>Events carry state and not differences, so hearing one twice does no harm. What changed at which position is
 * remembered for a while; a screen that comes back within it hears the rows that changed meanwhile, a later one the
 * whole board.
 */
@ApplicationScoped
class BoardStreams implements Screens {

    private static final int REMEMBERED = 2_000;

    @Inject
    ObjectMapper json;

    @Inject
    InstantSource time;

    private final Map<Consumer<Event>, BoardView> screens = new ConcurrentHashMap<>();
    private final Deque<BoardChanges> remembered = new ArrayDeque<>();
    private boolean forgotSome;

    /** @param data JSON on one line */
    record Event(String id, String name, String data) {}

    record Hello(long position, Instant asOf) {}

    record Touched(long position, Set<String> ids) {}

    record Measured(long position, Set<String> houses) {}

    record Beat(long position, Instant at) {}

    @Override
    public boolean isWatched(BoardView view) {
        return screens.containsValue(view);
    }

    @Override
    public synchronized void forget() {
        remembered.clear();
        forgotSome = true;
    }

    /** Tells the screen what it missed and from now on what changes. Called while nothing else changes. */
    void open(Consumer<Event> screen, BoardView view, Optional<FactPosition> heardUpTo, LiveBoard board) {
        screens.put(screen, view);
        FactPosition now = board.position();
        screen.accept(event(now, "hello", new Hello(now.value(), board.asOf())));
        if (heardUpTo.isEmpty()) {
            return;
        }
        Optional<BoardChanges> missed = since(heardUpTo.get(), board);
        if (missed.isPresent()) {
            tell(screen, view, missed.get(), board, new HashMap<>());
        } else {
            screen.accept(event(now, "snapshot", BoardWire.of(board.picture(view), row -> true)));
        }
    }

    void close(Consumer<Event> screen) {
        screens.remove(screen);
    }

    @Override
    public void publish(BoardChanges changes, LiveBoard board) {
        synchronized (this) {
            remembered.addLast(changes);
            if (remembered.size() > REMEMBERED) {
                remembered.removeFirst();
                forgotSome = true;
            }
        }
        Map<BoardView, List<Event>> boardEvents = new HashMap<>();
        screens.forEach((screen, view) -> tell(screen, view, changes, board, boardEvents));
    }

    private void tell(
            Consumer<Event> screen,
            BoardView view,
            BoardChanges changes,
            LiveBoard board,
            Map<BoardView, List<Event>> boardEvents) {
        FactPosition at = changes.position();
        if (changes.setup()) {
            screen.accept(event(at, "setup", new Hello(at.value(), changes.asOf())));
        }
        if (!changes.batches().isEmpty()) {
            screen.accept(event(at, "batches", new Touched(at.value(), changes.batches())));
        }
        if (!changes.houses().isEmpty()) {
            screen.accept(event(at, "climate", new Measured(at.value(), changes.houses())));
        }
        if (changes.orders()) {
            screen.accept(event(at, "orders", new Hello(at.value(), changes.asOf())));
        }
        if (!changes.cells().isEmpty()) {
            boardEvents
                    .computeIfAbsent(view, any -> boardEvents(board.news(view, changes.cells())))
                    .forEach(screen);
        }
    }

    private List<Event> boardEvents(LiveBoard.BoardNews news) {
        List<Event> events = new ArrayList<>(2);
        if (!news.rows().isEmpty()) {
            events.add(event(news.position(), "board", BoardWire.Changed.of(news)));
        }
        if (!news.removed().isEmpty()) {
            events.add(event(news.position(), "removed", BoardWire.Removed.of(news)));
        }
        return events;
    }

    /** All changes after a position together; empty if they are not all remembered. */
    private synchronized Optional<BoardChanges> since(FactPosition heard, LiveBoard board) {
        boolean reachesBack = !forgotSome
                || (!remembered.isEmpty() && remembered.getFirst().position().compareTo(heard) <= 0)
                || heard.equals(board.position());
        if (!reachesBack || heard.compareTo(board.position()) > 0) {
            return Optional.empty();
        }
        Set<Cell> cells = new HashSet<>();
        Set<String> batches = new HashSet<>();
        Set<String> houses = new HashSet<>();
        boolean orders = false;
        boolean setup = false;
        for (BoardChanges changes : remembered) {
            if (changes.position().compareTo(heard) >= 0) { // the clock changes rows without a new position
                cells.addAll(changes.cells());
                batches.addAll(changes.batches());
                houses.addAll(changes.houses());
                orders |= changes.orders();
                setup |= changes.setup();
            }
        }
        return Optional.of(new BoardChanges(board.position(), board.asOf(), cells, batches, houses, orders, setup));
    }

    /** Warnings come of the clock and of what is missing too, so they have no position of their own. */
    void warningsChanged(@Observes WarningsChanged changed) {
        screens.keySet().forEach(screen -> screen.accept(new Event("", "warnings", toJson(changed))));
    }

    /** So that a screen can tell silence from a broken line. */
    @Scheduled(every = "10s")
    void beat() {
        Instant now = time.instant();
        screens.keySet().forEach(screen -> screen.accept(new Event("", "beat", toJson(Map.of("at", now)))));
    }

    private Event event(FactPosition at, String name, Object data) {
        return new Event(Long.toString(at.value()), name, toJson(data));
    }

    private String toJson(Object data) {
        try {
            return json.writeValueAsString(data);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
