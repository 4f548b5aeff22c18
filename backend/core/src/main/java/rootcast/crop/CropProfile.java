package rootcast.crop;

import java.util.List;

/**
 * How a crop is expected to develop and survive from sticking to a ready liner.
 *
 * @param stages     STICK, CALLUS, ROOT in this order
 * @param rateSpread standard deviation of the natural logarithm of a batch's rate multiplier; 0.10 means that two
 *                   batches in three develop within about 10 % of the mean rate
 * @param holdDays   days that a ready liner may be held before it is past its best
 * @param cellSpread standard deviation of the natural logarithm of a cell's time within one batch
 * @param rates      how varieties and sites differ from the crop
 */
public record CropProfile(
        List<StageProfile> stages, double rateSpread, int holdDays, double cellSpread, RateFactors rates) {

    /** Common practice, no source. */
    public static final double USUAL_CELL_SPREAD = 0.12;

    /** Of a crop of which nothing is known beyond its stages. */
    public CropProfile(List<StageProfile> stages, double rateSpread, int holdDays) {
        this(stages, rateSpread, holdDays, USUAL_CELL_SPREAD, RateFactors.NONE);
    }

    public CropProfile {
        stages = List.copyOf(stages);
        if (!stages.stream().map(StageProfile::stage).toList().equals(Stage.GROWING)) {
            throw new IllegalArgumentException("a profile has the stages " + Stage.GROWING + " in this order, not "
                    + stages.stream().map(StageProfile::stage).toList());
        }
        if (!(rateSpread >= 0 && rateSpread <= 1)) {
            throw new FigureOutOfRange(
                    "rate spread %s must lie between 0 and 1".formatted(rateSpread),
                    "rateSpread",
                    rateSpread,
                    0.0,
                    1.0);
        }
        if (holdDays < 0 || holdDays > 365) {
            throw new FigureOutOfRange(
                    "hold days %s must lie between 0 and 365".formatted(holdDays), "holdDays", holdDays, 0.0, 365.0);
        }
        if (!(cellSpread >= 0.01 && cellSpread <= 1)) {
            throw new FigureOutOfRange(
                    "cell spread %s must lie between 0.01 and 1".formatted(cellSpread),
                    "cellSpread",
                    cellSpread,
                    0.01,
                    1.0);
        }
        double slowest = rates.slowest();
        for (StageProfile stage : stages) {
            stage.atRate(slowest); // refuses days that the slowest variety at the slowest site would take
        }
    }

    /** The profile of one variety at one site: days at its own rate, and no further factors. */
    public CropProfile forBatch(String variety, String site) {
        double rate = rates.of(variety, site);
        List<StageProfile> own =
                stages.stream().map(stage -> stage.atRate(rate)).toList();
        return new CropProfile(own, rateSpread, holdDays, cellSpread, RateFactors.NONE);
    }

    public StageProfile of(Stage stage) {
        return stages.get(Stage.GROWING.indexOf(stage));
    }
}
