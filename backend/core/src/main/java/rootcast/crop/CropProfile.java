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
 * @param variation  how its batches vary beside that, are looked at, and how well the days are known
 * @param calibration what the record of finished batches says of the ranges that follow from all this
 */
public record CropProfile(
        List<StageProfile> stages,
        double rateSpread,
        int holdDays,
        double cellSpread,
        RateFactors rates,
        Variation variation,
        Calibration calibration) {

    /** Common practice, no source. */
    public static final double USUAL_CELL_SPREAD = 0.12;

    /** Of a crop whose ranges were not held against its record. */
    public CropProfile(
            List<StageProfile> stages,
            double rateSpread,
            int holdDays,
            double cellSpread,
            RateFactors rates,
            Variation variation) {
        this(stages, rateSpread, holdDays, cellSpread, rates, variation, Calibration.NONE);
    }

    /** Of a crop of whose variation nothing was learned. */
    public CropProfile(
            List<StageProfile> stages, double rateSpread, int holdDays, double cellSpread, RateFactors rates) {
        this(stages, rateSpread, holdDays, cellSpread, rates, Variation.USUAL);
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
        return new CropProfile(own, rateSpread, holdDays, cellSpread, RateFactors.NONE, variation, calibration);
    }

    /** The same, its batches varying in another way. */
    public CropProfile varying(Variation other) {
        return new CropProfile(stages, rateSpread, holdDays, cellSpread, rates, other, calibration);
    }

    /** The same, its ranges as the record says. */
    public CropProfile calibrated(Calibration byRecord) {
        return new CropProfile(stages, rateSpread, holdDays, cellSpread, rates, variation, byRecord);
    }

    public StageProfile of(Stage stage) {
        return stages.get(Stage.GROWING.indexOf(stage));
    }

    /**
     * Standard deviation of ln(rate multiplier) of a batch of which nothing was seen: batches differ, and the days that the
     * multiplier is relative to are not known for certain.
     */
    public double rateDoubt() {
        return Math.sqrt(rateSpread * rateSpread + variation.daysDoubt() * variation.daysDoubt());
    }

    /**
     * Of that variance so much is a stage's own. Of what the days may be out, half is taken to be alike in all stages: whoever
     * states one stage too long tends to state the others too long. Our choice, no source.
     */
    public double stageShareOfDoubt() {
        double ofDays = variation.daysDoubt() * variation.daysDoubt();
        double all = rateSpread * rateSpread + ofDays;
        return all == 0
                ? variation.stageShare()
                : (rateSpread * rateSpread * variation.stageShare() + ofDays / 2) / all;
    }

    /** Of that variance so much is the days', which are out for every batch of the crop alike. */
    public double daysShareOfDoubt() {
        double ofDays = variation.daysDoubt() * variation.daysDoubt();
        double all = rateSpread * rateSpread + ofDays;
        return all == 0 ? 0 : ofDays / all;
    }
}
