package rootcast.availability;

import java.util.ArrayList;
import java.util.List;

/**
 * A promise at risk: the trays of it that can no longer be kept at its confidence.
 *
 * @param trays missing, at least 1
 */
public record Shortfall(Promise promise, int trays) {

    /** Every promise of the cell that is at risk, the most senior first; none of them is dropped. */
    public static List<Shortfall> of(CellSupply supply) {
        return of(Allotment.of(supply));
    }

    public static List<Shortfall> of(Allotment allotment) {
        List<Shortfall> all = new ArrayList<>();
        for (KeptPromise each : allotment.promises()) {
            if (!each.kept()) {
                all.add(new Shortfall(each.promise(), each.shortfallTrays()));
            }
        }
        all.sort((one, other) -> Allotment.SENIORITY.compare(one.promise(), other.promise()));
        return List.copyOf(all);
    }
}
