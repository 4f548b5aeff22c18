package rootcast.crop;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * Finds, quantity by quantity, whether one climate can suit every batch of a house.
 *
 * <p>Bands on a line share a value exactly if the greatest lower end does not lie above the least upper end; where they
 * do not, the value that suits the most trays is one of the lower ends. Of two that suit as many, the lower stands.
 */
public final class RecipeClashes {

    /**
     * A batch and what it asks for now.
     *
     * @param trays on the bench
     */
    public record Resident(String batch, int trays, StageRecipe recipe) {}

    private RecipeClashes() {}

    /** The clashes in a house, in the order of the quantities. */
    public static List<RecipeClash> in(List<Resident> residents) {
        List<RecipeClash> clashes = new ArrayList<>();
        for (RecipeQuantity quantity : RecipeQuantity.values()) {
            double least = Double.NEGATIVE_INFINITY;
            double most = Double.POSITIVE_INFINITY;
            for (Resident resident : residents) {
                least = Math.max(least, resident.recipe().band(quantity).least());
                most = Math.min(most, resident.recipe().band(quantity).most());
            }
            if (least > most) {
                clashes.add(clash(quantity, residents));
            }
        }
        return clashes;
    }

    /** Whether the resident could live with those of a house without adding a clash. */
    public static boolean fits(Resident resident, List<Resident> house) {
        List<Resident> together = new ArrayList<>(house);
        together.add(resident);
        return in(together).isEmpty();
    }

    /** What all of them share, or what suits the most trays where they share nothing; open at both ends for nobody. */
    public static Band suits(RecipeQuantity quantity, List<Resident> residents) {
        return residents.isEmpty()
                ? new Band(Double.NEGATIVE_INFINITY, Double.POSITIVE_INFINITY)
                : clash(quantity, residents).suits();
    }

    private static RecipeClash clash(RecipeQuantity quantity, List<Resident> residents) {
        double best = residents.stream()
                .map(resident -> resident.recipe().band(quantity).least())
                .max(Comparator.comparingInt((Double value) -> traysSuited(quantity, residents, value))
                        .thenComparing(Comparator.reverseOrder()))
                .orElseThrow();
        List<String> stay = new ArrayList<>();
        List<String> move = new ArrayList<>();
        double least = Double.NEGATIVE_INFINITY;
        double most = Double.POSITIVE_INFINITY;
        for (Resident resident : residents) {
            Band band = resident.recipe().band(quantity);
            if (band.holds(best)) {
                stay.add(resident.batch());
                least = Math.max(least, band.least());
                most = Math.min(most, band.most());
            } else {
                move.add(resident.batch());
            }
        }
        return new RecipeClash(quantity, new Band(least, most), stay, move);
    }

    private static int traysSuited(RecipeQuantity quantity, List<Resident> residents, double value) {
        return residents.stream()
                .filter(resident -> resident.recipe().band(quantity).holds(value))
                .mapToInt(Resident::trays)
                .sum();
    }
}
