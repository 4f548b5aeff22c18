package rootcast.app.climate;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import rootcast.app.site.PlannedSetpoint;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.outlook.HouseCurves;
import rootcast.site.House;

/** Curves of some houses, brought from one past moment to the next; a set-point counts from when it was recorded. */
public final class PastWalk {

    private final Map<House, HourlySeries> houses;
    private final List<PlannedSetpoint> planned;
    private final Map<String, SetpointPlan> plans = new HashMap<>();
    private final HouseCurves curves = new HouseCurves(Instant.EPOCH);
    private int known;

    PastWalk(Map<House, HourlySeries> houses, List<PlannedSetpoint> planned) {
        this.houses = houses;
        this.planned = new ArrayList<>(planned);
        this.planned.sort(Comparator.comparing(PlannedSetpoint::recordedAt));
        houses.forEach((house, medium) -> plan(house, medium, SetpointPlan.of(house.mediumSetpointC())));
    }

    /** At a moment no earlier than the last one. */
    public HouseCurves at(Instant moment) {
        while (known < planned.size() && !planned.get(known).recordedAt().isAfter(moment)) {
            take(planned.get(known++));
        }
        curves.advanceTo(moment);
        return curves;
    }

    private void take(PlannedSetpoint change) {
        houses.forEach((house, medium) -> {
            if (house.code().equals(change.house())) {
                plan(
                        house,
                        medium,
                        plans.get(house.code()).with(new SetpointPlan.Change(change.from(), change.mediumC())));
            }
        });
    }

    private void plan(House house, HourlySeries medium, SetpointPlan plan) {
        plans.put(house.code(), plan);
        curves.house(house.code(), medium, plan);
    }
}
