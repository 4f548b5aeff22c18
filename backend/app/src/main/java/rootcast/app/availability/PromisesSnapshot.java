package rootcast.app.availability;

import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import rootcast.availability.Cell;
import rootcast.availability.Promise;
import rootcast.availability.WantedLine;
import rootcast.ledger.OrderLine;

/**
 * Orders that stand.
 *
 * @param orders  by id
 * @param byCell  orders with a line in the cell
 * @param shipped trays that have left for a promise
 */
public record PromisesSnapshot(Map<UUID, Order> orders, Map<Cell, List<UUID>> byCell, Map<OrderLine, Integer> shipped) {

    public static final PromisesSnapshot NONE = new PromisesSnapshot(Map.of(), Map.of(), Map.of());

    public PromisesSnapshot {
        orders = Map.copyOf(orders);
        byCell = Map.copyOf(byCell);
        shipped = Map.copyOf(shipped);
    }

    /** With these orders as they are now: new ones, and released ones gone; and with these trays shipped. */
    public PromisesSnapshot with(Collection<Order> changed, Map<OrderLine, Integer> shippedNow) {
        if (changed.isEmpty() && shippedNow.isEmpty()) {
            return this;
        }
        Map<UUID, Order> nextOrders = new HashMap<>(orders);
        Map<Cell, List<UUID>> nextByCell = new HashMap<>(byCell);
        for (Order order : changed) {
            order.lines()
                    .forEach(line -> nextByCell.compute(line.cell(), (cell, ids) -> {
                        List<UUID> there = new ArrayList<>(ids == null ? List.of() : ids);
                        there.remove(order.id());
                        if (!order.isReleased()) {
                            there.add(order.id());
                        }
                        return there.isEmpty() ? null : List.copyOf(there);
                    }));
            if (order.isReleased()) {
                nextOrders.remove(order.id());
            } else {
                nextOrders.put(order.id(), order);
            }
        }
        Map<OrderLine, Integer> nextShipped = shipped;
        if (!shippedNow.isEmpty()) {
            nextShipped = new HashMap<>(shipped);
            nextShipped.putAll(shippedNow);
        }
        return new PromisesSnapshot(nextOrders, nextByCell, nextShipped);
    }

    public Optional<Order> order(UUID id) {
        return Optional.ofNullable(orders.get(id));
    }

    public Set<Cell> cells() {
        return byCell.keySet();
    }

    public int shippedFor(OrderLine line) {
        return shipped.getOrDefault(line, 0);
    }

    /** Promises of the cell with trays still to ship. */
    public List<Promise> of(Cell cell) {
        List<Promise> promises = new ArrayList<>();
        for (UUID id : byCell.getOrDefault(cell, List.of())) {
            Order order = orders.get(id);
            for (WantedLine line : order.lines()) {
                int left = line.trays() - shippedFor(new OrderLine(id, line.line()));
                if (line.cell().equals(cell) && left > 0) {
                    Promise whole = PlaceOrder.promise(order, line);
                    promises.add(new Promise(
                            whole.order(), whole.line(), whole.shipOn(), left, whole.confidence(), whole.position()));
                }
            }
        }
        return promises;
    }
}
