package rootcast.app.live.rest;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.InstantSource;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jboss.logging.Logger;
import rootcast.app.board.BoardView;
import rootcast.app.board.LiveBoard;
import rootcast.app.board.RowsSnapshot;
import rootcast.app.board.ShownRow;
import rootcast.app.board.rest.BoardWire;
import rootcast.app.climate.ClimateSnapshot;
import rootcast.app.live.Changes;
import rootcast.app.live.LiveFeed;
import rootcast.app.people.Caller;
import rootcast.app.people.Sites;
import rootcast.app.snapshot.Snapshot;
import rootcast.app.snapshot.Snapshots;
import rootcast.app.warnings.WarningsChanged;
import rootcast.availability.Cell;

/**
 * The open screens and what they have been told, on a thread of its own: the projector goes on while events are written.
 *
 * <p>Events carry state and not differences, so hearing one twice does no harm. What changed at which position is
 * remembered for a while; a screen that comes back within it hears the rows that changed meanwhile, a later one the
 * whole board. A screen that has heard more on another node than this one knows yet hears nothing until it does.
 */
@ApplicationScoped
class OpenScreens implements LiveFeed {

    private static final Logger LOG = Logger.getLogger(OpenScreens.class);

    @Inject
    ObjectMapper json;

    @Inject
    InstantSource time;

    @Inject
    Snapshots snapshots;

    @Inject
    Caller caller;

    private final ExecutorService thread = Executors.newSingleThreadExecutor(work -> {
        Thread made = new Thread(work, "live-feed");
        made.setDaemon(true);
        return made;
    });

    // All below belongs to that thread.
    private final Set<Screen> open = new LinkedHashSet<>();
    private final List<Screen> waiting = new ArrayList<>();
    private final RememberedChanges remembered = new RememberedChanges();

    /** What the open screens have been told; a new one begins there, and hears neither less nor anything twice. */
    private Snapshot latest = Snapshot.NOTHING;

    record Hello(long position, Instant asOf) {}

    record Touched(long position, Set<String> ids) {}

    record Measured(long position, Set<String> houses) {}

    /** @param asOf what the figures are true as of, which is older than {@code at} where the projector is behind */
    record Beat(Instant at, Instant asOf) {}

    @Override
    public void startOver() {
        onItsThread(remembered::forget);
    }

    @Override
    public void tell(Changes changes, Snapshot now) {
        onItsThread(() -> {
            latest = now;
            if (changes.isEmpty()) {
                letIn();
                return;
            }
            remembered.add(changes);
            Map<Audience, List<FeedEvent>> written = new HashMap<>();
            open.forEach(screen -> written.computeIfAbsent(Audience.of(screen), who -> events(who, changes, now))
                    .forEach(screen.send()));
            letIn();
        });
    }

    /** Screens that look at the same get the same events. */
    private record Audience(BoardView view, Sites sites) {
        static Audience of(Screen screen) {
            return new Audience(screen.view(), screen.sites());
        }
    }

    /** Tells the screen what it missed and from now on what changes. */
    void open(Screen screen) {
        onItsThread(() -> {
            waiting.add(screen);
            letIn();
        });
    }

    void close(Screen screen) {
        onItsThread(() -> {
            open.remove(screen);
            waiting.remove(screen);
        });
    }

    private void letIn() {
        Snapshot now = latest;
        for (Iterator<Screen> all = waiting.iterator(); all.hasNext(); ) {
            Screen screen = all.next();
            if (screen.heard().map(now::isAtLeast).orElse(true)) {
                all.remove();
                open.add(screen);
                greet(screen, now);
            }
        }
    }

    private void greet(Screen screen, Snapshot now) {
        screen.send().accept(event(now, "hello", new Hello(now.position().value(), now.asOf())));
        screen.heard().ifPresent(heard -> {
            Optional<Changes> missed = remembered.since(heard, now);
            if (missed.isPresent()) {
                events(Audience.of(screen), missed.get(), now).forEach(screen.send());
            } else {
                screen.send()
                        .accept(event(
                                now,
                                "snapshot",
                                BoardWire.of(
                                        LiveBoard.boardIn(now, screen.view()),
                                        row -> screen.sites()
                                                .includes(row.head().cell().site()))));
            }
        });
    }

    private List<FeedEvent> events(Audience who, Changes changes, Snapshot now) {
        long at = now.position().value();
        List<FeedEvent> events = new ArrayList<>();
        if (changes.setup()) {
            events.add(event(now, "setup", new Hello(at, now.asOf())));
        }
        Set<String> batches = changes.batches().entrySet().stream()
                .filter(batch -> who.sites().includes(batch.getValue()))
                .map(Map.Entry::getKey)
                .collect(Collectors.toSet());
        if (!batches.isEmpty()) {
            events.add(event(now, "batches", new Touched(at, batches)));
        }
        var houses = now.part(ClimateSnapshot.class).houses();
        Set<String> measured = changes.houses().stream()
                .filter(house -> houses.containsKey(house)
                        && who.sites().includes(houses.get(house).site()))
                .collect(Collectors.toSet());
        if (!measured.isEmpty()) {
            events.add(event(now, "climate", new Measured(at, measured)));
        }
        if (changes.orders()) {
            events.add(event(now, "orders", new Hello(at, now.asOf())));
        }
        addRows(events, who, changes, now);
        return events;
    }

    private void addRows(List<FeedEvent> events, Audience who, Changes changes, Snapshot now) {
        RowsSnapshot rows = now.part(RowsSnapshot.class);
        List<ShownRow> there = new ArrayList<>();
        List<Cell> gone = new ArrayList<>();
        changes.cells().stream()
                .filter(cell -> who.sites().includes(cell.site()))
                .sorted()
                .forEach(cell -> rows.row(cell, who.view()).ifPresentOrElse(there::add, () -> gone.add(cell)));
        if (!there.isEmpty()) {
            events.add(event(now, "board", BoardWire.Changed.of(now, there)));
        }
        if (!gone.isEmpty()) {
            events.add(event(now, "removed", BoardWire.Removed.of(now, gone)));
        }
    }

    /** Warnings come of the clock and of what is missing too, so they have no position of their own. */
    void warningsChanged(@Observes WarningsChanged changed) {
        onItsThread(() -> open.stream()
                .filter(screen -> screen.sites().includes(changed.site()))
                .forEach(screen -> screen.send().accept(new FeedEvent("", "warnings", toJson(changed)))));
    }

    /** So that a screen can tell silence from a broken line, and fresh figures from old ones. */
    @Scheduled(every = "10s")
    void beat() {
        onItsThread(() -> {
            endThoseSignedOut();
            FeedEvent beat = new FeedEvent(
                    "", "beat", toJson(new Beat(time.instant(), snapshots.now().asOf())));
            open.forEach(screen -> screen.send().accept(beat));
            waiting.forEach(screen -> screen.send().accept(beat));
        });
    }

    /** A screen whose reader has signed out, or holds other rights than when it was opened, has to ask again. */
    private void endThoseSignedOut() {
        Stream.concat(open.stream(), waiting.stream())
                .filter(screen -> !caller.stillIn(screen.reader()))
                .toList()
                .forEach(screen -> {
                    open.remove(screen);
                    waiting.remove(screen);
                    screen.end().run();
                });
    }

    void stop(@Observes ShutdownEvent event) {
        thread.shutdownNow();
    }

    private void onItsThread(Runnable work) {
        thread.execute(() -> {
            try {
                work.run();
            } catch (RuntimeException fault) {
                LOG.error("the live feed left something out; screens hear it when they load again", fault);
            }
        });
    }

    private FeedEvent event(Snapshot now, String name, Object data) {
        return new FeedEvent(Long.toString(now.position().value()), name, toJson(data));
    }

    private String toJson(Object data) {
        try {
            return json.writeValueAsString(data);
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
