package rootcast.outlook;

import java.util.Arrays;
import rootcast.crop.CropProfile;
import rootcast.crop.StageProfile;
import rootcast.crop.Variation;

/**
 * A crop's stages as its people call them complete.
 *
 * <p>A stage that another follows ends when so many of its cells are through as the business calls it complete with ({@link
 * Variation#calledShare}), and the next begins then; so nothing of it is still to come once it was entered. The last one ends when nine
 * cells in ten are through, whenever it is called, for what sales may promise is counted in cells. The profile's days are until nine
 * in ten: on the clock since sticking, where cells are log-normal, the share q is through at T · exp((z_q − z₀.₉) · spread).
 */
final class CalledStages {

    private final double[] days;
    private final CellSpread[] cells;
    private final CellSpread lastAsCalled;

    CalledStages(CropProfile profile) {
        int count = profile.stages().size();
        CellSpread[] complete = CellSpread.ofStages(profile);
        double called = profile.variation().calledShare();
        days = profile.stages().stream()
                .mapToDouble(StageProfile::daysAtReference)
                .toArray();
        cells = complete.clone();
        if (called == Variation.COMPLETE_SHARE) {
            lastAsCalled = cells[count - 1];
            return;
        }
        double quantile = CellSpread.quantileOf(called);
        Arrays.setAll(cells, stage -> stage < count - 1 ? complete[stage].ending(quantile) : complete[stage]);
        double[] since = CellSpread.daysSinceSticking(days, complete, cells);
        for (int stage = 0; stage < count; stage++) {
            days[stage] = since[stage] - (stage == 0 ? 0 : since[stage - 1]);
            cells[stage] = cells[stage].onClock(days[stage] / since[stage]);
        }
        lastAsCalled = cells[count - 1].ending(quantile);
    }

    /** Days at reference from the end of the stage before to the stage's own. */
    double days(int stage) {
        return days[stage];
    }

    CellSpread cells(int stage) {
        return cells[stage];
    }

    /** Of the last stage if its end is taken to be the moment at which it is called. */
    CellSpread lastAsCalled() {
        return lastAsCalled;
    }

    /** Development that a stage has when it is called complete; 1 but for the last. */
    double calledAt(int stage) {
        return stage == cells.length - 1 ? cells[stage].progressAtEndOf(lastAsCalled) : 1;
    }
}
