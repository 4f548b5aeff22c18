package rootcast.app.site;

import java.time.Instant;
import java.util.List;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import rootcast.climate.SetpointPlan;
import rootcast.outlook.UsualMove;
import rootcast.site.House;

/**
 * What people have planned for houses, in the order in which they said so.
 *
 * @param setpoints what their medium is set to, past and to come
 * @param moves     where their batches go on to
 */
public record HousePlans(List<PlannedSetpoint> setpoints, List<StatedMove> moves) {

    public static final HousePlans NONE = new HousePlans(List.of(), List.of());

    public HousePlans {
        setpoints = List.copyOf(setpoints);
        moves = List.copyOf(moves);
    }

    /** Those that had been said by an instant. */
    public HousePlans saidBy(Instant instant) {
        return new HousePlans(
                kept(setpoints, change -> !change.recordedAt().isAfter(instant)),
                kept(moves, move -> !move.recordedAt().isAfter(instant)));
    }

    private static <T> List<T> kept(List<T> all, Predicate<T> wanted) {
        return all.stream().filter(wanted).toList();
    }

    public SetpointPlan setpointsOf(House house) {
        SetpointPlan plan = SetpointPlan.of(house.mediumSetpointC());
        for (PlannedSetpoint change : setpoints) {
            if (change.house().equals(house.code())) {
                plan = plan.with(new SetpointPlan.Change(change.from(), change.mediumC()));
            }
        }
        return plan;
    }

    /** The move that was said last; null if there is none. */
    public @Nullable UsualMove moveFrom(String house) {
        StatedMove last = moveSaidOf(house);
        return last == null ? null : last.move();
    }

    /** The same with when it was said; null if nothing ever was. */
    public @Nullable StatedMove moveSaidOf(String house) {
        StatedMove last = null;
        for (StatedMove stated : moves) {
            last = stated.house().equals(house) ? stated : last;
        }
        return last;
    }
}
