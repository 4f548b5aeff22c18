package rootcast.app.availability;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.ToIntFunction;
import rootcast.availability.Cell;
import rootcast.availability.Promise;
import rootcast.availability.WantedLine;
import rootcast.ledger.OrderLine;

/** Orders that stand, by cell. Changed only by {@code flow}; read by anyone. */
@ApplicationScoped
public class LivePromises {

    private final Map<UUID, Order> orders = new ConcurrentHashMap<>();
    private final Map<Cell, Set<UUID>> byCell = new ConcurrentHashMap<>();

    /** Takes an order as it is now and gives the cells it bears on. */
    public Set<Cell> take(Order order) {
        Set<Cell> cells = new HashSet<>();
        for (WantedLine line : order.lines()) {
            cells.add(line.cell());
            Set<UUID> there = byCell.computeIfAbsent(line.cell(), any -> ConcurrentHashMap.newKeySet());
            if (order.isReleased()) {
                there.remove(order.id());
            } else {
                there.add(order.id());
            }
        }
        if (order.isReleased()) {
            orders.remove(order.id());
        } else {
            orders.put(order.id(), order);
        }
        return cells;
    }

    public void clear() {
        orders.clear();
        byCell.clear();
    }

    public Collection<Order> orders() {
        return orders.values();
    }

    public Optional<Order> order(UUID id) {
        return Optional.ofNullable(orders.get(id));
    }

    public Set<Cell> cells() {
        return byCell.keySet();
    }

    /** Promises of the cell with trays still to ship. */
    public List<Promise> of(Cell cell, ToIntFunction<OrderLine> shippedTrays) {
        List<Promise> promises = new ArrayList<>();
        for (UUID id : byCell.getOrDefault(cell, Set.of())) {
            Order order = orders.get(id);
            if (order == null) {
                continue; // released a moment ago
            }
            for (WantedLine line : order.lines()) {
                int left = line.trays() - shippedTrays.applyAsInt(new OrderLine(id, line.line()));
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
