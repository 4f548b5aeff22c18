package rootcast.rounds;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Band;
import rootcast.crop.CropRecipe;
import rootcast.crop.Phase;
import rootcast.crop.RecipeClash;
import rootcast.crop.RecipeClashes;
import rootcast.crop.RecipeClashes.Resident;
import rootcast.crop.RecipeQuantity;
import rootcast.ledger.BatchState;
import rootcast.saying.Saying;

/**
 * Which batches of a site's houses cannot live together, and what can be done about those that should move.
 *
 * <p>A house that is closed after a treatment is no place to carry a batch to; it is named with the time at which it
 * opens. A move is advised only where there is an open house that suits.
 *
 * @param clashes by house, only of houses that have any
 * @param ways    by batch that should move
 * @param moves   by batch that can be moved now
 */
public record HouseClimateFit(
        Map<String, List<RecipeClash>> clashes, Map<String, Ways> ways, Map<String, BatchCare.MoveAdvice> moves) {

    private static final Ways NONE = new Ways(List.of(), Map.of(), null);

    /**
     * What can be done with a batch that should move.
     *
     * @param fits    open houses in which it clashes with nobody
     * @param later   closed houses in which it would, with what closes them
     * @param nearest where the least would have to change; null if there is a house that fits, or will be
     */
    public record Ways(
            List<String> fits,
            Map<String, Treatment> later,
            @Nullable Nearest nearest) {}

    /**
     * @param house where it stands, if nothing less than there would have to change elsewhere
     * @param gaps  what would have to give way, in the order of the quantities
     */
    public record Nearest(String house, List<Gap> gaps) {}

    /**
     * @param asks  what the batch asks for
     * @param suits what the others of the house share, or most of them
     */
    public record Gap(RecipeQuantity quantity, Band asks, Band suits) {}

    /** Of a batch that may stay where it is: nothing to be done. */
    public Ways waysOf(String batch) {
        return ways.getOrDefault(batch, NONE);
    }

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

    /**
     * @param byHouse also of houses without a batch
     * @param closed  houses that must not be entered now, with what closes them
     */
    public static HouseClimateFit of(
            Map<String, List<ResidentBatch>> byHouse, Map<String, Treatment> closed, Instant now) {
        Map<String, List<Resident>> residents = new TreeMap<>();
        byHouse.forEach((house, batches) -> residents.put(
                house, batches.stream().map(batch -> batch.residentAt(now)).toList()));
        Map<String, List<RecipeClash>> clashes = new TreeMap<>();
        Map<String, Ways> ways = new TreeMap<>();
        Map<String, BatchCare.MoveAdvice> moves = new TreeMap<>();
        for (Map.Entry<String, List<Resident>> house : residents.entrySet()) {
            List<RecipeClash> clashing = RecipeClashes.in(house.getValue());
            if (clashing.isEmpty()) {
                continue;
            }
            clashes.put(house.getKey(), clashing);
            Instant since = byHouse.get(house.getKey()).stream()
                    .map(batch -> batch.unchangedSince(now))
                    .max(Instant::compareTo)
                    .orElseThrow();
            for (Resident resident : house.getValue()) {
                List<String> quantities = clashing.stream()
                        .filter(clash -> clash.move().contains(resident.batch()))
                        .map(clash -> clash.quantity().wireName())
                        .toList();
                if (!quantities.isEmpty()) {
                    Ways found = waysOf(resident, house.getKey(), residents, closed);
                    ways.put(resident.batch(), found);
                    if (!found.fits().isEmpty()) {
                        moves.put(
                                resident.batch(),
                                new BatchCare.MoveAdvice(
                                        since, Saying.of(Why.CLASHES, quantities, found.fits()), found.fits()));
                    }
                }
            }
        }
        return new HouseClimateFit(clashes, ways, moves);
    }

    private static Ways waysOf(
            Resident resident, String standsIn, Map<String, List<Resident>> residents, Map<String, Treatment> closed) {
        List<String> fits = new ArrayList<>();
        Map<String, Treatment> later = new TreeMap<>();
        Nearest nearest = new Nearest(standsIn, gaps(resident, residents.get(standsIn)));
        for (Map.Entry<String, List<Resident>> house : residents.entrySet()) {
            if (house.getKey().equals(standsIn)) {
                continue;
            }
            Treatment closing = closed.get(house.getKey());
            boolean suits = RecipeClashes.fits(resident, house.getValue());
            if (suits && closing == null) {
                fits.add(house.getKey());
            } else if (suits) {
                later.put(house.getKey(), closing);
            } else if (closing == null) {
                List<Gap> gaps = gaps(resident, house.getValue());
                // An open house that clashes within itself may ask nothing more of this batch and is still no place for
                // it.
                boolean isNearer =
                        !gaps.isEmpty() && gaps.size() < nearest.gaps().size();
                nearest = isNearer ? new Nearest(house.getKey(), gaps) : nearest;
            }
        }
        return new Ways(fits, later, fits.isEmpty() && later.isEmpty() ? nearest : null);
    }

    private static List<Gap> gaps(Resident resident, List<Resident> house) {
        List<Resident> others = house.stream()
                .filter(other -> !other.batch().equals(resident.batch()))
                .toList();
        List<Gap> gaps = new ArrayList<>();
        for (RecipeQuantity quantity : RecipeQuantity.values()) {
            Band asks = resident.recipe().band(quantity);
            Band suits = RecipeClashes.suits(quantity, others);
            if (asks.least() > suits.most() || asks.most() < suits.least()) {
                gaps.add(new Gap(quantity, asks, suits));
            }
        }
        return gaps;
    }
}
