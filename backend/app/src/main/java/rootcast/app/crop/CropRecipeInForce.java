package rootcast.app.crop;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import rootcast.crop.CropRecipe;

/**
 * A crop's recipe with its version.
 *
 * @param version    from 1; 0 for common practice that nobody has edited
 * @param recordedAt null for version 0
 */
public record CropRecipeInForce(
        CropRecipe recipe, int version, @Nullable Instant recordedAt) {}
