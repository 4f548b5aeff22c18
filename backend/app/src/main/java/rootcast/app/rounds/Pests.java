package rootcast.app.rounds;

import org.jspecify.annotations.Nullable;

/**
 * What a scout counted; null where nobody said.
 *
 * @param traps traps that were read
 */
public record Pests(
        @Nullable Integer traps,
        @Nullable Integer fungusGnats,
        @Nullable Integer shoreFlies,
        @Nullable Integer thrips,
        @Nullable Integer aphids,
        @Nullable Integer whiteflies,
        @Nullable Integer mites,
        @Nullable Integer otherPests) {

    public static final Pests NONE_SAID = new Pests(null, null, null, null, null, null, null, null);
}
