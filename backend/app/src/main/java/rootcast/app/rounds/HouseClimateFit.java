package rootcast.app.rounds;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rootcast.app.outlook.BatchPicture;
import rootcast.crop.CropRecipe;
import rootcast.crop.Phase;
import rootcast.crop.RecipeClash;
import rootcast.crop.RecipeClashes;
import rootcast.crop.RecipeClashes.Lodger;
import rootcast.ledger.Standing;
import rootcast.rounds.BatchCare;

/**
 * Which batches of a site's houses cannot live together, and where those that should move would fit.
 *
 * @param clashes by house, only of houses that have any
 * @param fits    by batch that should move, houses in which it clashes with nobody
 * @param moves   by batch that should move
 */
public record HouseClimateFit(
        Map<String, List<RecipeClash>> clashes,
        Map<String, List<String>> fits,
        Map<String, BatchCare.MoveAdvice> moves) {

    /** A batch with what it is to have. */
    public record Cared(BatchPicture picture, CropRecipe recipe) {

        String id() {
            return picture.batch().id();
        }

        public Phase phaseAt(Instant at) {
            return recipe.phaseAt(picture.batch().stuckAt(), picture.standing().reachedAt(), at);
        }

        Lodger lodgerAt(Instant at) {
            return new Lodger(id(), picture.standing().benchTrays(), recipe.of(phaseAt(at)));
        }

        /** When it last came into a house or a phase. */
        Instant settledAt(Instant at) {
            Standing standing = picture.standing();
            Instant came = standing.stays().get(standing.stays().size() - 1).fromInclusive();
            Instant phase = recipe.startOf(phaseAt(at), picture.batch().stuckAt(), standing.reachedAt())
                    .orElse(came);
            return phase.isAfter(came) ? phase : came;
        }
    }

    static HouseClimateFit of(Map<String, List<Cared>> byHouse, Instant now) {
        Map<String, List<Lodger>> lodgers = new TreeMap<>();
        byHouse.forEach((house, batches) -> lodgers.put(
                house, batches.stream().map(batch -> batch.lodgerAt(now)).toList()));
        Map<String, List<RecipeClash>> clashes = new TreeMap<>();
        Map<String, List<String>> fits = new TreeMap<>();
        Map<String, BatchCare.MoveAdvice> moves = new TreeMap<>();
        for (Map.Entry<String, List<Lodger>> house : lodgers.entrySet()) {
            List<RecipeClash> found = RecipeClashes.in(house.getValue());
            if (found.isEmpty()) {
                continue;
            }
            clashes.put(house.getKey(), found);
            Instant since = byHouse.get(house.getKey()).stream()
                    .map(batch -> batch.settledAt(now))
                    .max(Instant::compareTo)
                    .orElseThrow();
            for (Lodger lodger : house.getValue()) {
                List<String> quantities = found.stream()
                        .filter(clash -> clash.move().contains(lodger.batch()))
                        .map(clash -> clash.quantity().wireName())
                        .toList();
                if (!quantities.isEmpty()) {
                    List<String> elsewhere = housesThatFit(lodger, house.getKey(), lodgers);
                    fits.put(lodger.batch(), elsewhere);
                    moves.put(lodger.batch(), new BatchCare.MoveAdvice(since, why(quantities, elsewhere)));
                }
            }
        }
        return new HouseClimateFit(clashes, fits, moves);
    }

    private static List<String> housesThatFit(Lodger lodger, String standsIn, Map<String, List<Lodger>> lodgers) {
        List<String> fits = new ArrayList<>();
        lodgers.forEach((house, others) -> {
            if (!house.equals(standsIn) && RecipeClashes.fits(lodger, others)) {
                fits.add(house);
            }
        });
        return fits;
    }

    private static String why(List<String> quantities, List<String> elsewhere) {
        return "Clashes with the house's other batches on %s; %s."
                .formatted(
                        String.join(", ", quantities),
                        elsewhere.isEmpty()
                                ? "no house of the site suits it now"
                                : "would suit: " + String.join(", ", elsewhere));
    }
}
