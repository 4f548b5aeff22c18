package rootcast.rounds;

import java.util.List;

/**
 * What rounds need to know of a house.
 *
 * @param batches    with living plants, that stand in it now
 * @param cares      of the house, and of its batches wherever they stood; taken-back ones left out
 * @param treatments of the site, reversed ones left out
 * @param ecMeasured whether readings say how salty the medium is
 * @param dryAir     whether the air was drier than a batch's recipe allows during the last day
 */
public record HouseCare(
        String house,
        List<BatchCare> batches,
        List<Care> cares,
        List<Treatment> treatments,
        boolean dryAir,
        boolean ecMeasured) {

    public HouseCare {
        batches = List.copyOf(batches);
        cares = List.copyOf(cares);
        treatments = List.copyOf(treatments);
    }
}
