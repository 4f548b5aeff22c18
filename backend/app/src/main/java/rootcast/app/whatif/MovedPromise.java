package rootcast.app.whatif;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import rootcast.app.availability.CellSnapshot;
import rootcast.app.availability.Order;
import rootcast.app.availability.PromisesSnapshot;
import rootcast.availability.Allotment;
import rootcast.availability.Cell;
import rootcast.availability.KeptPromise;
import rootcast.availability.Promise;
import rootcast.ledger.OrderLine;

/**
 * A promise of which more or fewer trays could be kept.
 *
 * @param shortBefore trays of it that cannot be kept as things stand
 * @param shortAfter  and as they would stand
 */
public record MovedPromise(Cell cell, Order order, Promise promise, int shortBefore, int shortAfter) {

    /** Those of a cell that would fare otherwise, in the order of its promises. */
    static List<MovedPromise> between(CellSnapshot asItIs, CellSnapshot otherwise, PromisesSnapshot promises) {
        Map<OrderLine, Integer> before = new HashMap<>();
        for (KeptPromise kept : Allotment.of(asItIs.supply()).promises()) {
            before.put(lineOf(kept.promise()), kept.shortfallTrays());
        }
        List<MovedPromise> moved = new ArrayList<>();
        for (KeptPromise kept : Allotment.of(otherwise.supply()).promises()) {
            OrderLine line = lineOf(kept.promise());
            int shortBefore = before.get(line);
            if (shortBefore != kept.shortfallTrays()) {
                moved.add(new MovedPromise(
                        asItIs.cell(),
                        promises.order(line.order()).orElseThrow(),
                        kept.promise(),
                        shortBefore,
                        kept.shortfallTrays()));
            }
        }
        return moved;
    }

    private static OrderLine lineOf(Promise promise) {
        return new OrderLine(UUID.fromString(promise.order()), promise.line());
    }
}
