package rootcast.crop;

import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;

/**
 * What a crop profile says of one growing stage.
 *
 * @param stage           STICK, CALLUS or ROOT
 * @param daysAtReference days until 90 % of the living cells have passed the stage at the reference temperature
 * @param survivalMean    expected share of plants alive at the stage's start that are alive at its end, 0 to 1, ends
 *                        excluded
 * @param survivalWeight  how many plants' worth of experience the mean rests on; more means less spread between batches
 */
public record StageProfile(
        Stage stage, double daysAtReference, Cardinals cardinals, double survivalMean, double survivalWeight) {

    static final int MOST_DAYS = 365;

    public StageProfile {
        if (!Stage.GROWING.contains(stage)) {
            throw new FaultyValue("stage", stage, Fault.ONE_OF, Stage.GROWING);
        }
        if (!(daysAtReference > 0 && daysAtReference <= MOST_DAYS)) {
            throw new FaultyValue("daysAtReference", daysAtReference, Fault.OVER_AND_AT_MOST, 0, MOST_DAYS);
        }
        if (!(survivalMean > 0 && survivalMean < 1)) {
            throw new FaultyValue("survivalMean", survivalMean, Fault.BETWEEN_ENDS_EXCLUDED, 0, 1);
        }
        if (!(survivalWeight > 0 && survivalWeight <= 1e6)) {
            throw new FaultyValue("survivalWeight", survivalWeight, Fault.OVER_AND_AT_MOST, 0, 1_000_000);
        }
    }

    /** The stage for what develops at {@code rate} times the crop's rate. */
    StageProfile atRate(double rate) {
        return rate == 1
                ? this
                : new StageProfile(stage, daysAtReference / rate, cardinals, survivalMean, survivalWeight);
    }
}
