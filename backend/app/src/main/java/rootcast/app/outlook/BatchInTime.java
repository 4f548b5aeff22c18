package rootcast.app.outlook;

import rootcast.crop.CropProfile;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.HouseCurves;

/**
 * A batch as of an instant, with everything its numbers came from.
 *
 * @param made           also of a batch that is finished, for its plot
 * @param houses         as of that instant; of nobody else's use
 * @param profile        in force then, and its version
 * @param plannedProfile in force when the batch was stuck, and its version
 */
public record BatchInTime(
        BatchSnapshot snapshot, BatchOutlook made, HouseCurves houses, Version profile, Version plannedProfile) {

    public record Version(int number, CropProfile profile) {}
}
