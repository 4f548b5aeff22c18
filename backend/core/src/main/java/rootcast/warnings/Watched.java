package rootcast.warnings;

import java.time.Instant;
import java.util.List;
import rootcast.crop.CropRecipe;
import rootcast.ledger.BatchState;
import rootcast.rounds.Care;
import rootcast.rounds.Treatment;
import rootcast.site.Site;

/**
 * One house with everything that its warnings rest on.
 *
 * @param residents  batches with living plants that stand or stood in it
 * @param cares      of the house, and of its batches wherever they stood; taken-back ones left out
 * @param treatments of the site, reversed ones left out
 */
public record Watched(
        Site site,
        String house,
        HouseHours hours,
        List<Resident> residents,
        List<Care> cares,
        List<Treatment> treatments) {

    public record Resident(BatchState state, CropRecipe recipe) {

        boolean isIn(String house, Instant at) {
            String found = "";
            for (BatchState.Placement placement : state.placements()) {
                found = placement.fromInclusive().isAfter(at) ? found : placement.house();
            }
            return found.equals(house);
        }
    }

    public Watched {
        residents = List.copyOf(residents);
        cares = List.copyOf(cares);
        treatments = List.copyOf(treatments);
    }
}
