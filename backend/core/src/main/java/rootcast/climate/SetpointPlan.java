package rootcast.climate;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;

/**
 * What a house's medium is set to, hour by hour: a temperature to begin with and changes from given moments on.
 *
 * <p>A change holds from the first full hour that begins at or after it. Of two changes in the same hour the later one
 * holds. A temperature of null means that the heat is off. Not a number is refused.
 */
public final class SetpointPlan {

    /** @param mediumC °C; null for no set-point */
    public record Change(Instant fromInclusive, @Nullable Double mediumC) {

        public Change {
            if (mediumC != null && !Double.isFinite(mediumC)) {
                throw new IllegalArgumentException(mediumC + " °C is no temperature");
            }
        }
    }

    private static final SetpointPlan NONE = of(null);

    private final @Nullable Double initialC;
    private final List<Change> changes;
    private final long[] fromHour;

    private SetpointPlan(@Nullable Double initialC, List<Change> changes) {
        this.initialC = initialC;
        this.changes = changes;
        this.fromHour = changes.stream()
                .mapToLong(change ->
                        HourlySeries.hourOf(change.fromInclusive().plusSeconds(HourlySeries.HOUR_SECONDS - 1)))
                .toArray();
    }

    public static SetpointPlan none() {
        return NONE;
    }

    /** One temperature for ever. */
    public static SetpointPlan of(@Nullable Double mediumC) {
        return new SetpointPlan(mediumC, List.of());
    }

    public SetpointPlan with(Change change) {
        List<Change> more = new ArrayList<>(changes);
        more.add(change);
        more.sort(Comparator.comparing(Change::fromInclusive));
        return new SetpointPlan(initialC, List.copyOf(more));
    }

    /** The plan without what was to change from {@code instant} on. */
    public SetpointPlan until(Instant instant) {
        return new SetpointPlan(
                initialC,
                changes.stream()
                        .filter(change -> change.fromInclusive().isBefore(instant))
                        .toList());
    }

    /** °C in an hour; null if nothing is set. */
    public @Nullable Double mediumC(long hour) {
        int in = changes.size() - 1;
        while (in >= 0 && fromHour[in] > hour) {
            in--;
        }
        return in < 0 ? initialC : changes.get(in).mediumC();
    }

    /** Hours after {@code hour} in which it changes, rising. */
    public long[] changesAfter(long hour) {
        return java.util.Arrays.stream(fromHour)
                .filter(from -> from > hour)
                .distinct()
                .toArray();
    }

    /** How far an hour is set above another, °C; empty if one of them has no set-point. */
    OptionalDouble rise(long hour, long aboveHour) {
        Double hereC = mediumC(hour);
        Double thereC = mediumC(aboveHour);
        return hereC == null || thereC == null ? OptionalDouble.empty() : OptionalDouble.of(hereC - thereC);
    }

    @Override
    public boolean equals(Object other) {
        return other instanceof SetpointPlan that
                && java.util.Objects.equals(initialC, that.initialC)
                && changes.equals(that.changes);
    }

    @Override
    public int hashCode() {
        return java.util.Objects.hash(initialC, changes);
    }
}
