package rootcast.app.crop;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One version of a crop's profile, with where it comes from and whether it counts.
 *
 * @param adoptedAt last time; null if it never was
 * @param inForce   the last one that was adopted
 * @param pinned    in force, and no other may be adopted
 * @param evidence  JSON; null if somebody entered it
 */
public record ProfileVersion(
        SourcedCrop sourced,
        Origin origin,
        Instant createdAt,
        @Nullable Instant adoptedAt,
        boolean inForce,
        boolean pinned,
        @Nullable String evidence) {

    public enum Origin {
        ENTERED,
        LEARNED
    }

    public int version() {
        return sourced.version();
    }
}
