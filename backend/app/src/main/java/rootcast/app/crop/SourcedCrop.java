package rootcast.app.crop;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Crop;
import rootcast.crop.Stage;

/**
 * A crop with where its profile's values come from.
 *
 * @param version of the profile, from 1; 0 before it is stored
 * @param sources per stage, free text
 */
public record SourcedCrop(
        Crop crop,
        int version,
        Map<Stage, String> sources,
        @Nullable String note) {}
