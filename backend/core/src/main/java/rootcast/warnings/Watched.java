package rootcast.warnings;

import java.time.Instant;
import java.util.List;
import rootcast.crop.CropRecipe;
import rootcast.ledger.Standing;
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

    public record Resident(Standing standing, CropRecipe recipe) {

        boolean isIn(String house, Instant at) {
            String found = "";
            for (Standing.Stay stay : standing.stays()) {
                found = stay.fromInclusive().isAfter(at) ? found : stay.house();
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
