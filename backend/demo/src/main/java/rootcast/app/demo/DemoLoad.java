package rootcast.app.demo;

import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import java.util.function.Consumer;
import rootcast.ledger.OrderLine;
import rootcast.ledger.What;

/**
 * Plays the demo into the application: set-up, readings, batches with their entries, then orders, what was shipped for
 * them, and the rounds that were walked. Orders come after the batches so that they are promised from all that stands on the benches.
 */
public final class DemoLoad {

    private static final int READINGS_AT_ONCE = 10_000;

    /** Batches and entries of one transaction; each is looked up among those before it, so many more would be slower. */
    private static final int FACTS_AT_ONCE = 150;

    private DemoLoad() {}

    /** What was played, and what the application refused. */
    public record Played(int batches, int entries, int readings, int orders, List<DemoOrder> refusedOrders) {}

    public static Played play(DemoScenario scenario, DemoScenario.Told told, DemoSink sink) {
        sink.setUp(scenario.setup(), scenario.crops());
        inParts(told.readings(), READINGS_AT_ONCE, sink::readings);
        inParts(told.batches(), FACTS_AT_ONCE, sink::batches);

        Set<DemoEntry> forOrders = fromShippingForOrdersOn(told.entries());
        List<DemoEntry> before = told.entries().stream()
                .filter(entry -> !forOrders.contains(entry))
                .toList();
        inParts(before, FACTS_AT_ONCE, sink::entries);
        List<DemoOrder> refused =
                told.orders().stream().filter(order -> !sink.order(order)).toList();
        Set<UUID> unknown = new HashSet<>();
        refused.forEach(order -> unknown.add(order.id()));
        List<DemoEntry> after =
                forOrders.stream().map(entry -> without(unknown, entry)).toList();
        inParts(after, FACTS_AT_ONCE, sink::entries);
        sink.cares(told.cares());
        return new Played(
                told.batches().size(),
                told.entries().size(),
                told.readings().size(),
                told.orders().size(),
                refused);
    }

    private static <T> void inParts(List<T> all, int atOnce, Consumer<List<T>> sink) {
        for (int from = 0; from < all.size(); from += atOnce) {
            sink.accept(all.subList(from, Math.min(all.size(), from + atOnce)));
        }
    }

    /** Shipments that name an order, and what was recorded of their batches after them. */
    private static Set<DemoEntry> fromShippingForOrdersOn(List<DemoEntry> entries) {
        Set<DemoEntry> found = new LinkedHashSet<>();
        Set<String> batches = new HashSet<>();
        for (DemoEntry entry : entries) {
            if (entry.what() instanceof What.Ship ship && ship.orderLine() != null) {
                batches.add(entry.batch());
            }
            if (batches.contains(entry.batch())) {
                found.add(entry);
            }
        }
        return found;
    }

    private static DemoEntry without(Set<UUID> unknownOrders, DemoEntry entry) {
        if (entry.what() instanceof What.Ship ship) {
            OrderLine line = ship.orderLine();
            if (line != null && unknownOrders.contains(line.order())) {
                return new DemoEntry(
                        entry.id(),
                        entry.batch(),
                        entry.happenedAt(),
                        entry.recordedAt(),
                        entry.recordedBy(),
                        new What.Ship(ship.trays(), ship.plants(), null),
                        entry.note());
            }
        }
        return entry;
    }
}
