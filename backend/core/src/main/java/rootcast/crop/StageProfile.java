package rootcast.crop;

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

    public StageProfile {
        if (!Stage.GROWING.contains(stage)) {
            throw new IllegalArgumentException(stage + " takes no time; a profile has " + Stage.GROWING);
        }
        if (!(daysAtReference > 0 && daysAtReference <= 365)) {
            throw new FigureOutOfRange(
                    "%s days in %s must be over 0 and at most 365".formatted(daysAtReference, stage),
                    "daysAtReference",
                    daysAtReference,
                    0.0,
                    365.0);
        }
        if (!(survivalMean > 0 && survivalMean < 1)) {
            throw new FigureOutOfRange(
                    "survival %s in %s must lie between 0 and 1".formatted(survivalMean, stage),
                    "survivalMean",
                    survivalMean,
                    0.0,
                    1.0);
        }
        if (!(survivalWeight > 0 && survivalWeight <= 1e6)) {
            throw new FigureOutOfRange(
                    "survival weight %s in %s must be over 0 and at most 1000000".formatted(survivalWeight, stage),
                    "survivalWeight",
                    survivalWeight,
                    0.0,
                    1e6);
        }
    }

    /** The stage for what develops at {@code rate} times the crop's rate. */
    StageProfile atRate(double rate) {
        return rate == 1
                ? this
                : new StageProfile(stage, daysAtReference / rate, cardinals, survivalMean, survivalWeight);
    }
}
