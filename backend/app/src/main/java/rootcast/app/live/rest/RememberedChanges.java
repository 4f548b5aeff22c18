package rootcast.app.live.rest;

import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import rootcast.app.live.Changes;
import rootcast.app.snapshot.Snapshot;
import rootcast.availability.Cell;
import rootcast.facts.FactPosition;

/** What changed at which position, for screens that come back. */
final class RememberedChanges {

    private static final int MOST = 2_000;

    private final Deque<Changes> changes = new ArrayDeque<>();

    /** Everything after this position is remembered. */
    private FactPosition from = new FactPosition(Long.MAX_VALUE);

    void forget() {
        changes.clear();
        from = new FactPosition(Long.MAX_VALUE);
    }

    void add(Changes newest) {
        if (changes.isEmpty()) {
            from = newest.position();
        }
        changes.addLast(newest);
        if (changes.size() > MOST) {
            changes.removeFirst();
            from = changes.getFirst().position();
        }
    }

    /** All changes from a position on together; empty if they are not all remembered. */
    Optional<Changes> since(FactPosition heard, Snapshot now) {
        boolean nothingSince = heard.equals(now.position()) && changes.isEmpty();
        boolean heardNothing = heard.equals(FactPosition.START);
        if (heardNothing || !nothingSince && heard.compareTo(from) < 0) {
            return Optional.empty();
        }
        Set<Cell> cells = new HashSet<>();
        Map<String, String> batches = new HashMap<>();
        Set<String> houses = new HashSet<>();
        boolean orders = false;
        boolean setup = false;
        for (Changes each : changes) {
            if (each.position().compareTo(heard) >= 0) { // the clock changes rows without a new position
                cells.addAll(each.cells());
                batches.putAll(each.batches());
                houses.addAll(each.houses());
                orders |= each.orders();
                setup |= each.setup();
            }
        }
        return Optional.of(new Changes(now.position(), now.asOf(), cells, batches, houses, orders, setup));
    }
}
