package rootcast.crop;

import java.util.List;

/**
 * Batches of one house that no single climate suits.
 *
 * @param stay the batches that a climate between {@code least} and {@code most} suits: the most trays that can be suited
 * @param move the others, which would be better off elsewhere
 */
public record RecipeClash(RecipeQuantity quantity, Band suits, List<String> stay, List<String> move) {}
