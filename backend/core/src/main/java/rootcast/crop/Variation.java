package rootcast.crop;

import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;

/**
 * How batches of a crop vary beside their rate, how they are looked at, and how well the crop's days are known: all of it learned
 * from finished batches (docs/models/learning.md), and as is usual until then.
 *
 * @param roundsDays  how far apart people come round to see whether a stage is complete, days; 0.05 to 10
 * @param stageShare  of the variance of ln(rate multiplier) so much is a stage's own and not the batch's; 0.03 to 0.9
 * @param cellsDiffer standard deviation of ln(how far a batch's cells lie apart) between batches; 0 to 0.6
 * @param daysDoubt   standard deviation of ln(days at reference) around the profile's: how far these may be out; 0 to 0.5
 * @param enteredShare of the stages that end so many are entered, by whoever comes round next; 0 to 1
 * @param calledShare of the living cells so many are through with a stage when it is called complete, half of the times; 0.5 to 0.995
 */
public record Variation(
        double roundsDays,
        double stageShare,
        double cellsDiffer,
        double daysDoubt,
        double enteredShare,
        double calledShare) {

    public static final double LEAST_STAGE_SHARE = 0.03;

    public static final double MOST_STAGE_SHARE = 0.9;

    public static final double MOST_CELLS_DIFFER = 0.6;

    /** Of the living cells so many are through with a stage when it ends. */
    public static final double COMPLETE_SHARE = 0.9;

    public static final double LEAST_CALLED_SHARE = 0.5;

    public static final double MOST_CALLED_SHARE = 0.995;

    /**
     * Of a crop of which nothing was learned. Rounds, how far cells differ and how far stated days may be out are common practice,
     * no source; the share of a stage was settled on a simulator; whether stages are entered is as likely as not (Laplace); a stage is
     * complete with nine cells in ten, as we define it.
     */
    public static final Variation USUAL = new Variation(2, 0.26, 0.3, 0.3, 0.5, COMPLETE_SHARE);

    public Variation {
        between("roundsDays", roundsDays, 0.05, 10);
        between("stageShare", stageShare, LEAST_STAGE_SHARE, MOST_STAGE_SHARE);
        between("cellsDiffer", cellsDiffer, 0, MOST_CELLS_DIFFER);
        between("daysDoubt", daysDoubt, 0, 0.5);
        between("enteredShare", enteredShare, 0, 1);
        between("calledShare", calledShare, LEAST_CALLED_SHARE, MOST_CALLED_SHARE);
    }

    private static void between(String field, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new FaultyValue(field, value, Fault.BETWEEN, least, most);
        }
    }

    /** The same where the days are known for certain. */
    public Variation withDaysKnown() {
        return doubting(0);
    }

    /** The same where the days may be so far out. */
    public Variation doubting(double days) {
        return new Variation(roundsDays, stageShare, cellsDiffer, days, enteredShare, calledShare);
    }

    /** The same where so many of the stages that end are entered. */
    public Variation entering(double share) {
        return new Variation(roundsDays, stageShare, cellsDiffer, daysDoubt, share, calledShare);
    }

    /** The same where stages are called complete with so many of their cells through. */
    public Variation calling(double share) {
        return new Variation(roundsDays, stageShare, cellsDiffer, daysDoubt, enteredShare, share);
    }
}
