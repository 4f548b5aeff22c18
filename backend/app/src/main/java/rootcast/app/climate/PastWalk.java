package rootcast.app.climate;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.TreeSet;
import rootcast.app.site.HousePlans;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.outlook.HouseCurves;
import rootcast.site.House;

/** Curves of some houses, brought from one past moment to the next; a plan counts from when it was recorded. */
public final class PastWalk {

    private final Map<House, HourlySeries> houses;
    private final HousePlans planned;
    private final Map<House, SetpointPlan> inForce = new HashMap<>();
    private final TreeSet<Instant> saidAt = new TreeSet<>();
    private final HouseCurves curves = new HouseCurves(Instant.EPOCH);

    PastWalk(Map<House, HourlySeries> houses, HousePlans planned) {
        this.houses = houses;
        this.planned = planned;
        planned.setpoints().forEach(change -> saidAt.add(change.recordedAt()));
        planned.moves().forEach(move -> saidAt.add(move.recordedAt()));
        plan(HousePlans.NONE);
    }

    /** At a moment no earlier than the last one. */
    public HouseCurves at(Instant moment) {
        boolean moreWasSaid = false;
        while (!saidAt.isEmpty() && !saidAt.first().isAfter(moment)) {
            saidAt.pollFirst();
            moreWasSaid = true;
        }
        if (moreWasSaid) {
            plan(planned.saidBy(moment));
        }
        curves.advanceTo(moment);
        return curves;
    }

    private void plan(HousePlans plans) {
        houses.forEach((house, medium) -> {
            SetpointPlan setpoints = plans.setpointsOf(house);
            if (!setpoints.equals(inForce.put(house, setpoints))) {
                curves.house(house.code(), medium, setpoints);
            }
            curves.usualMove(house.code(), plans.moveFrom(house.code()));
        });
    }
}
