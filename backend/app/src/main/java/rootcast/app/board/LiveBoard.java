package rootcast.app.board;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ConcurrentSkipListMap;
import java.util.stream.Collectors;
import rootcast.app.availability.LiveSupply;
import rootcast.app.climate.LiveLock;
import rootcast.app.site.LiveSites;
import rootcast.availability.Cell;
import rootcast.board.BoardRow;
import rootcast.facts.FactPosition;
import rootcast.site.Site;

/**
 * The board as every open screen sees it.
 *
 * <p>Rows are kept per view and made anew only where something changed, so an open screen costs what changes and a
 * reload costs nothing. A view that nobody has asked for in a while is forgotten.
 */
@ApplicationScoped
public class LiveBoard {

    private static final int KEPT_VIEWS = 16;

    @Inject
    BoardRows rows;

    @Inject
    LiveSupply supply;

    @Inject
    LiveSites sites;

    @Inject
    LiveLock live;

    @Inject
    Screens screens;

    private final Map<BoardView, KeptView> kept = new ConcurrentHashMap<>();
    private final Map<String, LocalDate> daySeen = new HashMap<>();
    private volatile FactPosition position = FactPosition.START;
    private volatile Instant asOf = Instant.EPOCH;

    private static final class KeptView {
        private final Map<Cell, ShownRow> rows = new ConcurrentSkipListMap<>();
        private volatile long askedNanos = System.nanoTime();
    }

    /** @param rows in order of variety, tray format and site */
    public record Picture(FactPosition position, Instant asOf, BoardView view, List<ShownRow> rows) {}

    public FactPosition position() {
        return position;
    }

    public Instant asOf() {
        return asOf;
    }

    public void startAt(FactPosition start, Instant now) {
        position = start;
        asOf = now;
        kept.clear();
        dayHasPassed(now);
        screens.forget();
    }

    /** The board under this view. */
    public Picture picture(BoardView view) {
        KeptView keptView = kept.get(view);
        if (keptView == null) {
            keptView = live.holding(() -> {
                forgetTheLongestUnasked();
                return kept.computeIfAbsent(view, this::madeAnew);
            });
        }
        keptView.askedNanos = System.nanoTime();
        FactPosition at = position;
        Instant when = asOf;
        return new Picture(at, when, view, List.copyOf(keptView.rows.values()));
    }

    /** The rows that stand under this view, and of the cells asked for those that have no row. */
    public BoardNews news(BoardView view, Collection<Cell> cells) {
        Map<Cell, ShownRow> now = kept.computeIfAbsent(view, this::madeAnew).rows;
        List<BoardRow> changed = new ArrayList<>();
        List<Cell> removed = new ArrayList<>();
        for (Cell cell : cells) {
            Optional.ofNullable(now.get(cell))
                    .ifPresentOrElse(shown -> changed.add(shown.row()), () -> removed.add(cell));
        }
        return new BoardNews(position, asOf, changed, removed);
    }

    /** Rows that changed and rows that are gone. */
    public record BoardNews(FactPosition position, Instant asOf, List<BoardRow> rows, List<Cell> removed) {}

    /** Brings every kept view up to date and tells the open screens. Called in order of position. */
    public void publish(BoardChanges changes) {
        position = changes.position();
        asOf = changes.asOf();
        if (changes.isEmpty()) {
            return;
        }
        kept.forEach((view, keptView) -> changes.cells().forEach(cell -> put(keptView, view, cell)));
        screens.publish(changes, this);
    }

    /** The change from not knowing anything. */
    public BoardChanges everything(FactPosition at, Instant now) {
        return new BoardChanges(at, now, supply.cells(), Set.of(), Set.of(), true, true);
    }

    /** Whether it has become another day on any site since this was last asked. */
    public boolean dayHasPassed(Instant now) {
        Map<String, LocalDate> today =
                sites.sites().stream().collect(Collectors.toMap(Site::code, site -> site.dayOf(now)));
        boolean passed = !new HashSet<>(today.entrySet()).equals(daySeen.entrySet());
        daySeen.clear();
        daySeen.putAll(today);
        return passed;
    }

    private KeptView madeAnew(BoardView view) {
        KeptView made = new KeptView();
        supply.cells().forEach(cell -> put(made, view, cell));
        return made;
    }

    private void put(KeptView keptView, BoardView view, Cell cell) {
        rows.row(cell, view)
                .ifPresentOrElse(row -> keptView.rows.put(cell, new ShownRow(row)), () -> keptView.rows.remove(cell));
    }

    private void forgetTheLongestUnasked() {
        while (kept.size() >= KEPT_VIEWS) {
            kept.entrySet().stream()
                    .filter(entry -> !screens.isWatched(entry.getKey()))
                    .min(java.util.Comparator.comparingLong(entry -> entry.getValue().askedNanos))
                    .ifPresentOrElse(
                            oldest -> kept.remove(oldest.getKey()),
                            () -> kept.remove(kept.keySet().iterator().next()));
        }
    }
}
