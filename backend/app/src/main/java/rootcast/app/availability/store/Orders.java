package rootcast.app.availability.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Collectors;
import rootcast.app.availability.Order;
import rootcast.facts.FactPosition;

/** Orders as stored. */
@ApplicationScoped
@Transactional
public class Orders {

    @Inject
    Heads heads;

    @Inject
    Lines lines;

    @Inject
    OrderMapper mapper;

    @ApplicationScoped
    static class Heads implements PanacheRepositoryBase<CustomerOrderRow, UUID> {}

    @ApplicationScoped
    static class Lines implements PanacheRepositoryBase<OrderLineRow, OrderLineRow.Id> {}

    public void add(Order order) {
        heads.persist(mapper.row(order));
        heads.flush();
        order.lines().forEach(line -> lines.persist(mapper.row(line, order.id())));
    }

    /** For the next order. To be asked by whoever holds the head, so that no number is given twice or left out. */
    public long nextNumber() {
        return heads.find("order by orderNo desc")
                        .page(0, 1)
                        .firstResultOptional()
                        .map(last -> last.orderNo)
                        .orElse(0L)
                + 1;
    }

    public void release(UUID order, String by, Instant at, FactPosition position) {
        CustomerOrderRow row = heads.findById(order);
        row.releasedAt = at;
        row.releasedBy = by;
        row.releasedPosition = position.value();
    }

    public Optional<Order> order(UUID id) {
        return heads.findByIdOptional(id)
                .map(row -> mapper.order(row, lines.list("id.orderId = ?1 order by id.lineNo", id)));
    }

    public List<Order> all() {
        return withLines(heads.list("order by positionNo"));
    }

    /** Every order that stands. */
    public List<Order> open() {
        return withLines(heads.list("releasedPosition is null order by positionNo"));
    }

    /** Orders placed or released between two positions. */
    public List<Order> changedBetween(FactPosition afterExclusive, FactPosition upToInclusive) {
        return withLines(heads.list(
                "(positionNo > ?1 and positionNo <= ?2) or (releasedPosition > ?1 and releasedPosition <= ?2)"
                        + " order by positionNo",
                afterExclusive.value(),
                upToInclusive.value()));
    }

    private List<Order> withLines(List<CustomerOrderRow> rows) {
        if (rows.isEmpty()) {
            return List.of();
        }
        Map<UUID, List<OrderLineRow>> byOrder = (rows.size() > 500
                        ? lines.listAll()
                        : lines.list(
                                "id.orderId in ?1",
                                rows.stream().map(row -> row.id).toList()))
                .stream()
                        .sorted(Comparator.comparingInt(line -> line.id.lineNo()))
                        .collect(Collectors.groupingBy(line -> line.id.orderId()));
        return rows.stream().map(row -> mapper.order(row, byOrder.get(row.id))).toList();
    }
}
