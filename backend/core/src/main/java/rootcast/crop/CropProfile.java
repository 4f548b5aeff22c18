package rootcast.crop;

import java.util.List;

/**
 * How a crop is expected to develop and survive from sticking to a ready liner.
 *
 * @param stages     STICK, CALLUS, ROOT in this order
 * @param rateSpread standard deviation of the natural logarithm of a batch's rate multiplier; 0.10 means that two
 *                   batches in three develop within about 10 % of the mean rate
 * @param holdDays   days that a ready liner may be held before it is past its best
 */
public record CropProfile(List<StageProfile> stages, double rateSpread, int holdDays) {

    public CropProfile {
        stages = List.copyOf(stages);
        if (!stages.stream().map(StageProfile::stage).toList().equals(Stage.GROWING)) {
            throw new IllegalArgumentException("a profile has the stages " + Stage.GROWING + " in this order, not "
                    + stages.stream().map(StageProfile::stage).toList());
        }
        if (!(rateSpread >= 0 && rateSpread <= 1)) {
            throw new IllegalArgumentException("rate spread %s must lie between 0 and 1".formatted(rateSpread));
        }
        if (holdDays < 0 || holdDays > 365) {
            throw new IllegalArgumentException("hold days %s must lie between 0 and 365".formatted(holdDays));
        }
    }

    /** Standard deviation of ln(a cell's time) within a batch. Common practice, no source. */
    public double cellSpread() {
        return 0.12;
    }

    public StageProfile of(Stage stage) {
        return stages.get(Stage.GROWING.indexOf(stage));
    }
}
