package rootcast.availability;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/**
 * Everything that bears on what may be promised in one cell.
 *
 * @param lots     every lot of the cell, in any order
 * @param promises every promise of the cell with trays still to ship, whatever its date
 * @param today    the date at the cell's site; nothing can ship before it
 */
public record CellSupply(List<SupplyLot> lots, List<Promise> promises, LocalDate today) {

    public CellSupply {
        lots = List.copyOf(lots);
        promises = List.copyOf(promises);
    }

    public CellSupply plus(Promise promise) {
        var more = new ArrayList<>(promises);
        more.add(promise);
        return new CellSupply(lots, more, today);
    }
}
