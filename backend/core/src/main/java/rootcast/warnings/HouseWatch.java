package rootcast.warnings;

import java.time.Instant;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.rounds.Rhythm;

/**
 * The warnings of one house, worked out again only when something that they rest on has changed: the hours that have ended, the
 * batches and their recipes, care, treatments.
 *
 * <p>What the passing of minutes alone does is seen when the hour ends, as hours are looked at when they have ended. Not for
 * several threads at once.
 */
public final class HouseWatch {

    private @Nullable Basis basis;
    private List<Warning> found = List.of();

    /** As {@link Watch#over}. */
    public List<Warning> over(Watched house, Rhythm rhythm, long fromInclusive, long untilExclusive, Instant now) {
        Basis next = Basis.of(house, rhythm, fromInclusive, untilExclusive);
        if (basis == null || !basis.isSameAs(next)) {
            basis = null; // until the new one is complete
            found = List.copyOf(Watch.over(next.house, rhythm, fromInclusive, untilExclusive, now));
            basis = next;
        }
        return found;
    }

    /** @param hours by measured quantity and hour */
    private record Basis(Watched house, Rhythm rhythm, long fromHour, long untilHour, double[][] hours) {

        static Basis of(Watched house, Rhythm rhythm, long from, long until) {
            double[][] hours = new double[Measured.values().length][(int) (until - from)];
            for (Measured measured : Measured.values()) {
                double[] values = hours[measured.ordinal()];
                Arrays.setAll(values, hour -> house.hours().at(measured, from + hour));
            }
            HouseHours asTheyWere = (measured, hour) ->
                    hour < from || hour >= until ? Double.NaN : hours[measured.ordinal()][(int) (hour - from)];
            return new Basis(
                    new Watched(
                            house.site(),
                            house.house(),
                            asTheyWere,
                            house.residents(),
                            house.cares(),
                            house.treatments()),
                    rhythm,
                    from,
                    until,
                    hours);
        }

        boolean isSameAs(Basis other) {
            return fromHour == other.fromHour
                    && untilHour == other.untilHour
                    && rhythm.equals(other.rhythm)
                    && house.site().equals(other.house.site())
                    && house.house().equals(other.house.house())
                    && house.residents().equals(other.house.residents())
                    && house.cares().equals(other.house.cares())
                    && house.treatments().equals(other.house.treatments())
                    && Arrays.deepEquals(hours, other.hours);
        }
    }
}
