package rootcast.app.availability;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import rootcast.app.availability.store.Orders;
import rootcast.app.ledger.ShipFor;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.app.problem.Problem;
import rootcast.availability.Cell;
import rootcast.availability.WantedLine;
import rootcast.ledger.Batch;
import rootcast.ledger.OrderLine;
import rootcast.ledger.What;
import rootcast.saying.Fault;

/** A promise is fulfilled by trays of its own variety, format and site, and never beyond what was promised. */
@ApplicationScoped
class ShipForPromise implements ShipFor {

    @Inject
    Orders orders;

    @Inject
    PanacheLedger ledger;

    @Override
    public void check(Batch batch, What.Ship ship) {
        OrderLine named = ship.orderLine();
        if (named == null) {
            return;
        }
        Order order = orders.order(named.order())
                .filter(each -> !each.isReleased())
                .orElseThrow(() -> Problem.unknownCode("order", named.order().toString()));
        WantedLine line = order.lines().stream()
                .filter(each -> each.line() == named.line())
                .findFirst()
                .orElseThrow(() -> Problem.notAllowed(
                        "line", named.line(), Fault.BETWEEN, 1, order.lines().size()));
        Cell cell = BatchSnapshot.cellOf(batch);
        if (!line.cell().equals(cell)) {
            throw Problem.notAllowed(
                    "order",
                    named.order(),
                    Fault.PROMISES_OTHER_TRAYS,
                    line.cell().variety(),
                    line.cell().trayFormat(),
                    line.cell().site());
        }
        int left = line.trays() - ledger.traysShippedFor(named);
        if (ship.trays() > left) {
            throw Problem.notAllowed("trays", ship.trays(), Fault.AT_MOST, left);
        }
    }
}
