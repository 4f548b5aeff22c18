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
        int[] kept = Allotment.keptTrays(supply);
        List<Shortfall> all = new ArrayList<>();
        for (int i = 0; i < kept.length; i++) {
            Promise promise = supply.promises().get(i);
            if (kept[i] < promise.trays()) {
                all.add(new Shortfall(promise, promise.trays() - kept[i]));
            }
        }
        all.sort((one, other) -> Allotment.SENIORITY.compare(one.promise(), other.promise()));
        return List.copyOf(all);
    }
}
