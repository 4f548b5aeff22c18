package rootcast.app.warnings;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.warnings.Watch;

/**
 * What a warning rests on.
 *
 * @param hours    what its rule saw; empty for what rests on no value
 * @param lastDone when somebody last closed a check that settles it; null if nobody has
 */
public record SeenOfWarning(
        List<Watch.Seen> hours, @Nullable Instant lastDone) {}
