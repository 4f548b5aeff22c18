package rootcast.app.availability;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.UUID;
import rootcast.app.availability.store.Orders;
import rootcast.app.once.FactHead;
import rootcast.app.people.Right;
import rootcast.app.people.Rights;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;

/** Gives back what an order still holds. What has shipped stays shipped. */
@ApplicationScoped
public class ReleaseOrder {

    @Inject
    Rights rights;

    @Inject
    Orders orders;

    @Inject
    FactHead head;

    /** To be called inside {@link rootcast.app.once.Once}; releasing twice is releasing once. */
    public void release(UUID id, String by, Instant at) {
        Order order = orders.order(id).orElseThrow(() -> Problem.notFound(Thing.ORDER, id.toString()));
        order.lines().forEach(line -> rights.at(line.cell().site(), Right.WRITE_ORDERS));
        if (!order.isReleased()) {
            orders.release(id, by, at, head.next());
        }
    }
}
