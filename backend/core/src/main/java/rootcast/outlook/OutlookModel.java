package rootcast.outlook;

import java.time.Instant;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;

/**
 * From what is recorded of a batch and its houses to its {@link Outlook}.
 *
 * <p>The answer is as of the instant of the {@link HouseCurves}; nothing recorded later may be in the history. Equal
 * facts give equal answers to the last bit.
 */
public final class OutlookModel {

    private OutlookModel() {}

    public static Outlook outlook(BatchHistory history, CropProfile profile, TrayFormat format, HouseCurves houses) {
        return BatchOutlook.of(history, profile, format, houses).now();
    }

    /** How fast the batch is believed to be in a stage, after everything that was seen of it. */
    public static RateBelief rate(BatchHistory history, CropProfile profile, HouseCurves houses, Stage stage) {
        return BatchOutlook.rates(history, profile, new StagePath(history, profile, houses))
                .of(Stage.GROWING.indexOf(stage));
    }

    /**
     * Share of the living cells of a finished batch that were usable at a moment: through with the last stage and not past
     * their last good day, as their spread around the batch's own date has it.
     *
     * @param history of the batch once it was ready
     * @param readyAt when as many cells were through as the business calls a stage complete with
     */
    public static double usableShare(
            BatchHistory history, CropProfile profile, HouseCurves houses, Instant readyAt, Instant at) {
        StagePath path = new StagePath(history, profile, houses);
        return CellTimes.of(
                        path,
                        BatchOutlook.rates(history, profile, path).of(StagePath.STAGES - 1),
                        path.stages().lastAsCalled(),
                        CellTimes.certain(readyAt))
                .usableShare(RateBelief.median(), at, profile.holdDays());
    }
}
