package rootcast.outlook;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rootcast.climate.FilledSeries;
import rootcast.climate.HourlySeries;
import rootcast.crop.Cardinals;

/**
 * The development curves of all houses as of an instant, each made when first asked for and brought up to date by the
 * hour.
 *
 * <p>One curve serves every batch in the house whose stage has those cardinals. New readings cost the hours they touch:
 * tell {@link #changed}, move on with {@link #advanceTo}, and the house's curves follow at the next question. The
 * result is that of curves made afresh, to the last bit. For a past instant make a second one over the same series.
 *
 * <p>Not safe for use by several threads at once, nor while a series of it is being added to.
 */
public final class HouseCurves {

    /** Curves begin this much before the first hour asked for, so that few batches make them begin anew. */
    private static final long HEAD_START_HOURS = 28 * 24;

    private final Map<String, Climate> houses = new HashMap<>();
    private Instant asOf;

    public HouseCurves(Instant asOf) {
        this.asOf = asOf;
    }

    public Instant asOf() {
        return asOf;
    }

    /** Only hours that had ended by {@code asOf} are known; the rest is forecast. */
    public void advanceTo(Instant asOf) {
        this.asOf = asOf;
    }

    /**
     * Adds a house, or replaces it if its set-point or its series is another now.
     *
     * @param medium    medium temperatures, which the caller goes on adding to
     * @param setpointC medium temperature the house is set to; null if none
     */
    public void house(String code, HourlySeries medium, @Nullable Double setpointC) {
        houses.put(code, new Climate(medium, setpointC));
    }

    /** Must be told after any change to a series, with the earliest hour that was touched. */
    public void changed(String house, Instant earliest) {
        Climate climate = of(house);
        long hour = HourlySeries.hourOf(earliest);
        if (hour < climate.filled.nextHour()) { // a later hour has not been looked at yet
            climate.staleFrom = Math.min(climate.staleFrom, hour);
        }
    }

    /** The house's hours as they are taken to have been. */
    public FilledSeries climateOf(String house) {
        return of(house).upToDate(asOf);
    }

    /** The curve, reaching back to {@code earliest} at least. */
    public DevelopmentCurve curve(String house, Cardinals cardinals, Instant earliest) {
        Climate climate = of(house);
        FilledSeries filled = climate.upToDate(asOf);
        long hour = HourlySeries.hourOf(earliest);
        DevelopmentCurve curve = climate.curves.get(cardinals);
        if (curve == null) {
            curve = new DevelopmentCurve(cardinals, filled, hour - HEAD_START_HOURS);
            climate.curves.put(cardinals, curve);
        } else if (hour < curve.firstHour()) {
            curve.beginAt(hour - HEAD_START_HOURS, filled);
        }
        return curve;
    }

    private Climate of(String house) {
        Climate climate = houses.get(house);
        if (climate == null) {
            throw new IllegalArgumentException("no climate of house '" + house + "'");
        }
        return climate;
    }

    private static final class Climate {
        private final HourlySeries medium;
        private final @Nullable Double setpointC;
        private final Map<Cardinals, DevelopmentCurve> curves = new HashMap<>();
        private FilledSeries filled;
        private long staleFrom = Long.MAX_VALUE;

        Climate(HourlySeries medium, @Nullable Double setpointC) {
            this.medium = medium;
            this.setpointC = setpointC;
            this.filled = new FilledSeries(medium, Instant.EPOCH, setpointC);
        }

        FilledSeries upToDate(Instant asOf) {
            long known = filled.nextHour();
            long now = HourlySeries.hourOf(asOf);
            if (now == known && staleFrom == Long.MAX_VALUE) {
                return filled;
            }
            filled = new FilledSeries(medium, asOf, setpointC);
            long from = filled.firstAffectedBy(Math.min(staleFrom, Math.min(known, now)));
            curves.values().forEach(curve -> curve.update(from, filled));
            staleFrom = Long.MAX_VALUE;
            return filled;
        }
    }
}
