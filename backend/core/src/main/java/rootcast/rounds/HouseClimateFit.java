package rootcast.rounds;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import rootcast.crop.CropRecipe;
import rootcast.crop.Phase;
import rootcast.crop.RecipeClash;
import rootcast.crop.RecipeClashes;
import rootcast.crop.RecipeClashes.Resident;
import rootcast.ledger.BatchState;

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

    /** A batch with living plants, with what it is to have. */
    public record ResidentBatch(BatchState state, CropRecipe recipe) {

        public String id() {
            return state.batch().id();
        }

        public Phase phaseAt(Instant at) {
            return recipe.phaseAt(state.batch().stuckAt(), state.reachedAt(), at);
        }

        Resident residentAt(Instant at) {
            return new Resident(id(), state.benchTrays(), recipe.of(phaseAt(at)));
        }

        /** When it last came into a house or a phase. */
        Instant unchangedSince(Instant at) {
            Instant came = state.placements().get(state.placements().size() - 1).fromInclusive();
            Instant phase = recipe.startOf(phaseAt(at), state.batch().stuckAt(), state.reachedAt())
                    .orElse(came);
            return phase.isAfter(came) ? phase : came;
        }
    }

    /** @param byHouse also of houses without a batch */
    public static HouseClimateFit of(Map<String, List<ResidentBatch>> byHouse, Instant now) {
        Map<String, List<Resident>> residents = new TreeMap<>();
        byHouse.forEach((house, batches) -> residents.put(
                house, batches.stream().map(batch -> batch.residentAt(now)).toList()));
        Map<String, List<RecipeClash>> clashes = new TreeMap<>();
        Map<String, List<String>> fits = new TreeMap<>();
        Map<String, BatchCare.MoveAdvice> moves = new TreeMap<>();
        for (Map.Entry<String, List<Resident>> house : residents.entrySet()) {
            List<RecipeClash> found = RecipeClashes.in(house.getValue());
            if (found.isEmpty()) {
                continue;
            }
            clashes.put(house.getKey(), found);
            Instant since = byHouse.get(house.getKey()).stream()
                    .map(batch -> batch.unchangedSince(now))
                    .max(Instant::compareTo)
                    .orElseThrow();
            for (Resident resident : house.getValue()) {
                List<String> quantities = found.stream()
                        .filter(clash -> clash.move().contains(resident.batch()))
                        .map(clash -> clash.quantity().wireName())
                        .toList();
                if (!quantities.isEmpty()) {
                    List<String> elsewhere = housesThatFit(resident, house.getKey(), residents);
                    fits.put(resident.batch(), elsewhere);
                    moves.put(resident.batch(), new BatchCare.MoveAdvice(since, why(quantities, elsewhere)));
                }
            }
        }
        return new HouseClimateFit(clashes, fits, moves);
    }

    private static List<String> housesThatFit(
            Resident resident, String standsIn, Map<String, List<Resident>> residents) {
        List<String> fits = new ArrayList<>();
        residents.forEach((house, others) -> {
            if (!house.equals(standsIn) && RecipeClashes.fits(resident, others)) {
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
