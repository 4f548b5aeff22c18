package rootcast.crop;

import java.util.List;
import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;

/**
 * How a crop is expected to develop and survive from sticking to a ready liner.
 *
 * @param stages     STICK, CALLUS, ROOT in this order
 * @param rateSpread standard deviation of the natural logarithm of a batch's rate multiplier; 0.10 means that two
 *                   batches in three develop within about 10 % of the mean rate
 * @param holdDays   days that a ready liner may be held before it is past its best
 * @param cellSpread standard deviation of the natural logarithm of a cell's time within one batch
 * @param rates      how varieties and sites differ from the crop
 * @param roundsDays how far apart people come round to see whether a stage is complete, days; 0.05 to 10
 * @param stageShare of the variance of ln(rate multiplier) so much is a stage's own and not the batch's; 0.03 to 0.9
 */
public record CropProfile(
        List<StageProfile> stages,
        double rateSpread,
        int holdDays,
        double cellSpread,
        RateFactors rates,
        double roundsDays,
        double stageShare) {

    /** Common practice, no source. */
    public static final double USUAL_CELL_SPREAD = 0.12;

    /** Common practice, no source. */
    public static final double USUAL_ROUNDS_DAYS = 2;

    /** Our choice, settled on a simulator. */
    public static final double USUAL_STAGE_SHARE = 0.26;

    public static final double LEAST_STAGE_SHARE = 0.03;

    public static final double MOST_STAGE_SHARE = 0.9;

    /** Of a crop whose people come round as is usual. */
    public CropProfile(
            List<StageProfile> stages, double rateSpread, int holdDays, double cellSpread, RateFactors rates) {
        this(stages, rateSpread, holdDays, cellSpread, rates, USUAL_ROUNDS_DAYS, USUAL_STAGE_SHARE);
    }

    /** Of a crop of which nothing is known beyond its stages. */
    public CropProfile(List<StageProfile> stages, double rateSpread, int holdDays) {
        this(stages, rateSpread, holdDays, USUAL_CELL_SPREAD, RateFactors.NONE);
    }

    public CropProfile {
        stages = List.copyOf(stages);
        if (!stages.stream().map(StageProfile::stage).toList().equals(Stage.GROWING)) {
            throw new FaultyValue(
                    "stages", stages.stream().map(StageProfile::stage).toList(), Fault.NOT_THE_STAGES, Stage.GROWING);
        }
        if (!(rateSpread >= 0 && rateSpread <= 1)) {
            throw new FaultyValue("rateSpread", rateSpread, Fault.BETWEEN, 0, 1);
        }
        if (holdDays < 0 || holdDays > 365) {
            throw new FaultyValue("holdDays", holdDays, Fault.BETWEEN, 0, 365);
        }
        if (!(cellSpread >= 0.01 && cellSpread <= 1)) {
            throw new FaultyValue("cellSpread", cellSpread, Fault.BETWEEN, 0.01, 1);
        }
        if (!(roundsDays >= 0.05 && roundsDays <= 10)) {
            throw new FaultyValue("roundsDays", roundsDays, Fault.BETWEEN, 0.05, 10);
        }
        if (!(stageShare >= LEAST_STAGE_SHARE && stageShare <= MOST_STAGE_SHARE)) {
            throw new FaultyValue("stageShare", stageShare, Fault.BETWEEN, LEAST_STAGE_SHARE, MOST_STAGE_SHARE);
        }
        double slowest = rates.slowest();
        for (StageProfile stage : stages) {
            double days = stage.daysAtReference() / slowest;
            if (days > StageProfile.MOST_DAYS) {
                throw new FaultyValue("rates", slowest, Fault.SLOWEST_TAKES_TOO_LONG, days, StageProfile.MOST_DAYS);
            }
        }
    }

    /** The profile of one variety at one site: days at its own rate, and no further factors. */
    public CropProfile forBatch(String variety, String site) {
        double rate = rates.of(variety, site);
        List<StageProfile> own =
                stages.stream().map(stage -> stage.atRate(rate)).toList();
        return new CropProfile(own, rateSpread, holdDays, cellSpread, RateFactors.NONE, roundsDays, stageShare);
    }

    public StageProfile of(Stage stage) {
        return stages.get(Stage.GROWING.indexOf(stage));
    }
}
