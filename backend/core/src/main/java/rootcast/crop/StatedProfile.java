package rootcast.crop;

import java.util.ArrayList;
import java.util.List;

/**
 * The part of a crop's profile that people have stated, free of what was ever learned: what learning begins from.
 *
 * <p>Learning takes in all records there are, each time. Begun from a profile that was learned from the same records it
 * would count them again and again, and its spreads would shrink with every press of the button. So it begins from the
 * crop's first profile, and of one that somebody enters later only what differs from the profile then in force counts as
 * stated: the rest of the form showed what had been learned.
 */
public final class StatedProfile {

    private StatedProfile() {}

    /**
     * What is stated once somebody has entered a profile.
     *
     * @param stated  until then
     * @param inForce that the person saw and changed
     */
    public static CropProfile entered(CropProfile stated, CropProfile inForce, CropProfile entered) {
        List<StageProfile> stages = new ArrayList<>();
        for (int k = 0; k < Stage.GROWING.size(); k++) {
            stages.add(stage(
                    stated.stages().get(k),
                    inForce.stages().get(k),
                    entered.stages().get(k)));
        }
        return new CropProfile(
                stages,
                entered.rateSpread() == inForce.rateSpread() ? stated.rateSpread() : entered.rateSpread(),
                entered.holdDays(),
                entered.cellSpread() == inForce.cellSpread() ? stated.cellSpread() : entered.cellSpread(),
                entered.rates().equals(inForce.rates()) ? stated.rates() : entered.rates(),
                variation(stated.variation(), inForce.variation(), entered.variation()));
    }

    private static Variation variation(Variation stated, Variation inForce, Variation entered) {
        return new Variation(
                entered.roundsDays() == inForce.roundsDays() ? stated.roundsDays() : entered.roundsDays(),
                entered.stageShare() == inForce.stageShare() ? stated.stageShare() : entered.stageShare(),
                entered.cellsDiffer() == inForce.cellsDiffer() ? stated.cellsDiffer() : entered.cellsDiffer(),
                entered.daysDoubt() == inForce.daysDoubt() ? stated.daysDoubt() : entered.daysDoubt(),
                entered.enteredShare() == inForce.enteredShare() ? stated.enteredShare() : entered.enteredShare(),
                entered.calledShare() == inForce.calledShare() ? stated.calledShare() : entered.calledShare());
    }

    /** Days mean nothing apart from the temperatures they are stated for, nor a survival without its weight. */
    private static StageProfile stage(StageProfile stated, StageProfile inForce, StageProfile entered) {
        boolean paceStays = entered.daysAtReference() == inForce.daysAtReference()
                && entered.cardinals().equals(inForce.cardinals());
        boolean survivalStays = entered.survivalMean() == inForce.survivalMean()
                && entered.survivalWeight() == inForce.survivalWeight();
        StageProfile pace = paceStays ? stated : entered;
        StageProfile survival = survivalStays ? stated : entered;
        return new StageProfile(
                stated.stage(),
                pace.daysAtReference(),
                pace.cardinals(),
                survival.survivalMean(),
                survival.survivalWeight());
    }
}
