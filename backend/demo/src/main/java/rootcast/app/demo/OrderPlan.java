package rootcast.app.demo;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.temporal.TemporalAdjusters;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import rootcast.app.crop.SeedTable;
import rootcast.site.Site;

/**
 * One order of seed/demo/orders.csv, relative to the demo's start.
 *
 * @param takenDaysAgo whole days before the start
 */
record OrderPlan(String key, String customer, double confidence, int takenDaysAgo, List<LinePlan> lines) {

    /**
     * @param shipInDays  days after the start's day, negative for the past; in the past the site's last ship day until
     *                    then, otherwise its first ship day from then on
     * @param shippedFrom key of the batch that a past line left from; empty otherwise
     */
    record LinePlan(String variety, String trayFormat, String site, int shipInDays, int trays, String shippedFrom) {

        LocalDate shipOn(DemoSetup setup, Instant start) {
            Site at = setup.site(site).site();
            LocalDate day = at.dayOf(start).plusDays(shipInDays);
            return day.with(
                    shipInDays < 0
                            ? TemporalAdjusters.previousOrSame(at.shipDay())
                            : TemporalAdjusters.nextOrSame(at.shipDay()));
        }
    }

    static List<OrderPlan> all(List<SeedTable.Row> rows) {
        Map<String, OrderPlan> orders = new LinkedHashMap<>();
        for (SeedTable.Row row : rows) {
            OrderPlan head = new OrderPlan(
                    row.text("order"),
                    row.text("customer"),
                    row.decimal("confidence"),
                    row.number("takenDaysAgo"),
                    new ArrayList<>());
            OrderPlan order = orders.computeIfAbsent(head.key(), key -> head);
            if (!order.customer.equals(head.customer)
                    || order.confidence != head.confidence
                    || order.takenDaysAgo != head.takenDaysAgo) {
                throw new IllegalArgumentException("%s line %d: lines of %s differ in customer, confidence or day"
                        .formatted(row.table(), row.line(), head.key()));
            }
            order.lines.add(new LinePlan(
                    row.text("variety"),
                    row.text("trayFormat"),
                    row.text("site"),
                    row.number("shipInDays"),
                    row.number("trays"),
                    row.text("shippedFrom")));
        }
        return List.copyOf(orders.values());
    }

    UUID id() {
        return Diary.idOf("demo " + key);
    }

    DemoOrder order(DemoSetup setup, Instant start) {
        return new DemoOrder(
                id(),
                customer,
                confidence,
                start.minus(Duration.ofDays(takenDaysAgo)),
                lines.stream()
                        .map(line -> new DemoOrder.Line(
                                line.variety(),
                                line.trayFormat(),
                                line.site(),
                                line.shipOn(setup, start),
                                line.trays()))
                        .toList());
    }
}
