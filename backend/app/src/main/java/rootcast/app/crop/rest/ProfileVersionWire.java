package rootcast.app.crop.rest;

import java.time.Instant;
import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.ProfileVersion;
import rootcast.learning.Evidence;

/**
 * A version of a crop's profile.
 *
 * @param adoptedAt last time; null if it never was
 * @param pinned    no other version may be adopted
 * @param evidence  what a learned version rests on; null if it was entered
 */
record ProfileVersionWire(
        int version,
        String origin,
        Instant createdAt,
        @Nullable Instant adoptedAt,
        boolean inForce,
        boolean pinned,
        ProfileWire profile,
        @Nullable Evidence evidence) {

    static ProfileVersionWire of(ProfileVersion version, @Nullable Evidence evidence) {
        return new ProfileVersionWire(
                version.version(),
                version.origin().name().toLowerCase(Locale.ROOT),
                version.createdAt(),
                version.adoptedAt(),
                version.inForce(),
                version.pinned(),
                ProfileWire.of(version.sourced()),
                evidence);
    }
}
