package rootcast.app.demo;

import java.util.HashSet;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.UUID;
import rootcast.ledger.OrderLine;
import rootcast.ledger.What;

/**
 * Plays the demo into the application: set-up, readings, batches with their entries, then orders, what was shipped for
 * them, and the rounds that were walked. Orders come after the batches so that they are promised from all that stands on the benches.
 */
public final class DemoLoad {

    private static final int READINGS_AT_ONCE = 2_000;

    private DemoLoad() {}

    /** What was played, and what the application refused. */
    public record Played(int batches, int entries, int readings, int orders, List<DemoOrder> refusedOrders) {}

    public static Played play(DemoScenario scenario, DemoScenario.Told told, DemoSink sink) {
        DemoSetup setup = scenario.setup();
        setup.sites().forEach(site -> sink.site(site.site()));
        setup.houses().forEach(house -> sink.house(house.house()));
        setup.trayFormats().forEach(sink::trayFormat);
        scenario.crops().forEach(sink::crop);
        setup.varieties().forEach(sink::variety);
        List<DemoReading> readings = told.readings();
        for (int from = 0; from < readings.size(); from += READINGS_AT_ONCE) {
            sink.readings(readings.subList(from, Math.min(readings.size(), from + READINGS_AT_ONCE)));
        }
        told.batches().forEach(sink::batch);

        Set<DemoEntry> forOrders = fromShippingForOrdersOn(told.entries());
        told.entries().stream().filter(entry -> !forOrders.contains(entry)).forEach(sink::entry);
        List<DemoOrder> refused =
                told.orders().stream().filter(order -> !sink.order(order)).toList();
        Set<UUID> unknown = new HashSet<>();
        refused.forEach(order -> unknown.add(order.id()));
        forOrders.forEach(entry -> sink.entry(without(unknown, entry)));
        sink.cares(DemoRounds.walked(scenario, told, scenario.recipes()));
        return new Played(
                told.batches().size(),
                told.entries().size(),
                readings.size(),
                told.orders().size(),
                refused);
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
