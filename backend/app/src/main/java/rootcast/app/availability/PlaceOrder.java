package rootcast.app.availability;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.availability.store.Orders;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.once.FactHead;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.RefusalTable;
import rootcast.app.site.store.Places;
import rootcast.availability.Allotment;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.availability.KeptPromise;
import rootcast.availability.MatchRules;
import rootcast.availability.Placing;
import rootcast.availability.Promise;
import rootcast.availability.WantedLine;
import rootcast.facts.FactPosition;
import rootcast.ledger.EntryRules;
import rootcast.saying.Fault;
import rootcast.site.Site;

/** Promises the lines of an order, all of them or none. */
@ApplicationScoped
public class PlaceOrder {

    private static final int FURTHEST_DAYS = 730;

    @Inject
    Rights rights;

    @Inject
    SupplyAtHead supply;

    @Inject
    Orders orders;

    @Inject
    Places places;

    @Inject
    Catalogue catalogue;

    @Inject
    FactHead head;

    /** @param id made by the caller */
    public record Wanted(UUID id, String customer, @Nullable String note, double confidence, List<WantedLine> lines) {}

    /** @param promises one per line, with the batches that serve it as things stand */
    public record Placed(Order order, List<KeptPromise> promises) {}

    /** To be called inside {@link rootcast.app.once.Once}. */
    public Placed place(Wanted wanted, String by, Instant recordedAt) {
        wanted.lines().forEach(line -> rights.at(line.cell().site(), Right.WRITE_ORDERS));
        wanted.lines().forEach(line -> check(line, recordedAt));
        Map<Cell, CellSupply> before = supply.of(
                wanted.lines().stream().map(WantedLine::cell).distinct().toList(), recordedAt);
        Placing placing = MatchRules.place(wanted.lines(), wanted.confidence(), before::get);
        if (placing instanceof Placing.Refused refused) {
            throw RefusalTable.problemOf(refused);
        }
        FactPosition position = head.next();
        Order order = new Order(
                wanted.id(),
                orders.nextNumber(),
                wanted.customer(),
                wanted.note(),
                wanted.confidence(),
                recordedAt,
                by,
                position,
                wanted.lines(),
                null,
                null);
        orders.add(order);
        return new Placed(order, promises(order, before));
    }

    private static List<KeptPromise> promises(Order order, Map<Cell, CellSupply> before) {
        Map<Cell, CellSupply> after = new LinkedHashMap<>(before);
        for (WantedLine line : order.lines()) {
            after.computeIfPresent(line.cell(), (cell, supply) -> supply.plus(promise(order, line)));
        }
        List<KeptPromise> all = new ArrayList<>();
        after.values().forEach(supply -> all.addAll(Allotment.of(supply).promises()));
        return all.stream()
                .filter(kept -> kept.promise().order().equals(order.id().toString()))
                .toList();
    }

    /** The promise that a line makes when nothing of it has shipped. */
    static Promise promise(Order order, WantedLine line) {
        return new Promise(
                order.id().toString(),
                line.line(),
                line.shipOn(),
                line.trays(),
                order.confidence(),
                order.position().value());
    }

    private void check(WantedLine line, Instant now) {
        Cell cell = line.cell();
        Site site = places.site(cell.site()).orElseThrow(() -> Problem.unknownCode("site", cell.site()));
        if (catalogue.variety(cell.variety()).isEmpty()) {
            throw Problem.unknownCode("variety", cell.variety());
        }
        if (catalogue.trayFormat(cell.trayFormat()).isEmpty()) {
            throw Problem.unknownCode("trayFormat", cell.trayFormat());
        }
        String field = "lines[" + (line.line() - 1) + "].";
        if (line.trays() > EntryRules.MOST_TRAYS) {
            throw Problem.notAllowed(field + "trays", line.trays(), Fault.BETWEEN, 1, EntryRules.MOST_TRAYS);
        }
        LocalDate today = site.dayOf(now);
        if (line.shipOn().isBefore(today) || line.shipOn().isAfter(today.plusDays(FURTHEST_DAYS))) {
            throw Problem.notAllowed(
                    field + "shipOn", line.shipOn(), Fault.DATES_BETWEEN, today, today.plusDays(FURTHEST_DAYS));
        }
    }
}
