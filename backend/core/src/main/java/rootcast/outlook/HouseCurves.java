package rootcast.outlook;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rootcast.climate.FilledSeries;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.climate.TemperatureSpread;
import rootcast.crop.Cardinals;

/**
 * The development curves of all houses as of an instant, each made when first asked for and brought up to date by the
 * hour.
 *
 * <p>One curve serves every batch in the house whose stage has those cardinals. New readings cost the hours they touch:
 * tell {@link #changed}, move on with {@link #advanceTo}, and the house's curves follow at the next question. The
 * result is that of curves made afresh, to the last bit. For a past instant make a second one over the same series.
 *
 * <p>Not safe for use by several threads at once, nor while a series of it is being added to; but after {@link #bringUpToDate}
 * and until the next change any number of threads may ask for curves that have been asked for before.
 */
public final class HouseCurves {

    /** Curves begin this much before the first hour asked for, so that few batches make them begin anew. */
    private static final long HEAD_START_HOURS = 28 * 24;

    private static final int DAY_HOURS = 24;

    private final Map<String, Climate> houses = new HashMap<>();
    private final Map<String, UsualMove> usualMoves = new HashMap<>();
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
     * Adds a house, or replaces it if its plan or its series is another now.
     *
     * @param medium medium temperatures, which the caller goes on adding to
     */
    public void house(String code, HourlySeries medium, SetpointPlan plan) {
        houses.put(code, new Climate(medium, plan));
    }

    /** Where batches of the house go on to; null if they stay until they ship. */
    public void usualMove(String house, @Nullable UsualMove move) {
        if (move == null) {
            usualMoves.remove(house);
        } else {
            usualMoves.put(house, move);
        }
    }

    @Nullable
    UsualMove usualMove(String house) {
        UsualMove move = usualMoves.get(house);
        return move == null || !houses.containsKey(move.to()) ? null : move;
    }

    /** The same houses as of the same instant, with other plans for some. Curves of the rest are shared. */
    public HouseCurves replanned(Map<String, SetpointPlan> plans) {
        HouseCurves replanned = new HouseCurves(asOf);
        replanned.houses.putAll(houses);
        replanned.usualMoves.putAll(usualMoves);
        plans.forEach((code, plan) -> replanned.house(code, of(code).medium, plan));
        return replanned;
    }

    public SetpointPlan planOf(String house) {
        return of(house).plan;
    }

    /**
     * The house's series as it is now, where the one given before is not written to but replaced; unlike {@link #house} it
     * keeps what did not change.
     */
    public void series(String house, HourlySeries medium) {
        of(house).medium = medium;
    }

    /** Must be told after any change to a series, with the earliest hour that was touched. */
    public void changed(String house, Instant earliest) {
        Climate climate = of(house);
        long hour = HourlySeries.hourOf(earliest);
        if (hour < climate.filled.nextHour()) { // a later hour has not been looked at yet
            climate.staleFrom = Math.min(climate.staleFrom, hour);
        }
    }

    /** Brings every house up to date, several at a time: none reads another's. */
    public void bringUpToDate() {
        houses.values().parallelStream().forEach(climate -> climate.upToDate(asOf));
    }

    /** The house's hours as they are taken to have been. */
    public FilledSeries climateOf(String house) {
        return of(house).upToDate(asOf);
    }

    /** How far the house's hours to come may run from what is forecast. */
    TemperatureSpread spreadOf(String house) {
        Climate climate = of(house);
        climate.upToDate(asOf);
        return climate.spread;
    }

    /** The hours of the house that nobody measured, reaching back to {@code earliest} at least. */
    BridgedHours bridged(String house, Instant earliest) {
        Climate climate = of(house);
        FilledSeries filled = climate.upToDate(asOf);
        long hour = HourlySeries.hourOf(earliest);
        if (climate.bridged == null) {
            climate.bridged = new BridgedHours(filled, hour - HEAD_START_HOURS);
        } else if (hour < climate.bridged.firstHour()) {
            climate.bridged.beginAt(hour - HEAD_START_HOURS, filled);
        }
        return climate.bridged;
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
        private HourlySeries medium;
        private final SetpointPlan plan;
        private final Map<Cardinals, DevelopmentCurve> curves = new HashMap<>();
        private @Nullable BridgedHours bridged;
        private FilledSeries filled;
        private TemperatureSpread spread;
        private long staleFrom = Long.MAX_VALUE;

        Climate(HourlySeries medium, SetpointPlan plan) {
            this.medium = medium;
            this.plan = plan;
            this.filled = new FilledSeries(medium, Instant.EPOCH, plan);
            this.spread = TemperatureSpread.before(medium, 0, plan);
        }

        FilledSeries upToDate(Instant asOf) {
            long known = filled.nextHour();
            long now = HourlySeries.hourOf(asOf);
            if (now == known && staleFrom == Long.MAX_VALUE) {
                return filled;
            }
            filled = new FilledSeries(medium, asOf, plan);
            long from = filled.firstAffectedBy(Math.min(staleFrom, Math.min(known, now)));
            curves.values().forEach(curve -> curve.update(from, filled));
            if (bridged != null) {
                bridged.update(from, filled);
            }
            long today = dayStart(now);
            if (today != dayStart(known) || staleFrom < today) {
                spread = TemperatureSpread.before(medium, today, plan);
            }
            staleFrom = Long.MAX_VALUE;
            return filled;
        }

        private static long dayStart(long hour) {
            return Math.floorDiv(hour, DAY_HOURS) * DAY_HOURS;
        }
    }
}
