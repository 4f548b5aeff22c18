package rootcast.outlook;

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
}
