package rootcast.scenario;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import rootcast.crop.Stage;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchHistory.Look;
import rootcast.outlook.BatchHistory.Plants;

/** The people of a {@link TrueBusiness}: when they come round, what they look at, what they call complete and write down. */
final class TruePeople {

    private static final Stage[] REACHED = {Stage.CALLUS, Stage.ROOT, Stage.READY};
    private static final double WEEK_HOURS = 24 * 7;

    /** Cells that stand in one tray; where trays differ people look at the cells of two. */
    static final int TRAY_CELLS = 20;

    private final Random random;
    private final Random extra;
    private final Truth.People habits;
    private final boolean traysDiffer;

    TruePeople(Random random, Random extra, Truth truth) {
        this.random = random;
        this.extra = extra;
        this.habits = truth.people();
        this.traysDiffer = truth.rates().tray() > 0;
    }

    /**
     * @param through by stage, when each cell was through with it, hours
     * @param alive   plants at the end of each stage
     */
    BatchHistory seen(int house, double stuck, double[][] through, int[] alive) {
        Instant stuckAt = TrueBusiness.at(stuck);
        double everyHours = 24 * (habits.leastDays() + (habits.mostDays() - habits.leastDays()) * random.nextDouble());
        boolean writesLooks = random.nextInt(4) > 0;
        Map<Stage, Instant> reached = new EnumMap<>(Stage.class);
        List<Look> looks = new ArrayList<>();
        Plants counted = new Plants(stuckAt, TrueBusiness.STUCK_PLANTS);
        int stage = 0;
        double now = stuck + everyHours * random.nextDouble();
        if (habits.onMondays()) {
            now = Math.ceil(stuck / WEEK_HOURS) * WEEK_HOURS + 7 + 8 * extra.nextDouble();
        }
        while (stage < REACHED.length) {
            int there = there(through[stage], now);
            if (there >= habits.calledAt() * habits.cells()) {
                now += habits.lateDays() == 0 ? 0 : 24 * habits.lateDays() * extra.nextDouble();
                if (stage == 2 || !happens(habits.missingShare())) {
                    reached.put(REACHED[stage], entered(now, stuckAt, reached));
                }
                if (stage < 2 && random.nextBoolean()) {
                    counted = new Plants(TrueBusiness.at(now), alive[stage]);
                }
                stage++;
            } else if (writesLooks) {
                int written = happens(habits.wrongShare()) ? extra.nextInt(habits.cells() + 1) : there;
                looks.add(new Look(TrueBusiness.at(now), REACHED[stage], habits.cells(), written));
            }
            now += everyHours;
        }
        return new BatchHistory(
                stuckAt,
                reached,
                List.of(new BatchHistory.Placement("H" + house, stuckAt)),
                counted,
                List.of(),
                List.of(),
                null,
                looks);
    }

    private int there(double[] through, double now) {
        int there = 0;
        int tray = 0;
        for (int i = 0; i < habits.cells(); i++) {
            int cell;
            if (traysDiffer) {
                tray = i % TRAY_CELLS == 0 ? extra.nextInt(through.length / TRAY_CELLS) : tray;
                cell = tray * TRAY_CELLS + i % TRAY_CELLS;
            } else {
                cell = random.nextInt(through.length);
            }
            there += through[cell] <= now ? 1 : 0;
        }
        return there;
    }

    /** The time that is written down: at times three days early, though never before the stage that came before. */
    private Instant entered(double now, Instant stuckAt, Map<Stage, Instant> before) {
        Instant written = TrueBusiness.at(happens(habits.wrongShare()) ? now - 72 : now);
        Instant earliest = before.values().stream().max(Instant::compareTo).orElse(stuckAt);
        return written.isBefore(earliest) ? earliest : written;
    }

    private boolean happens(double share) {
        return share > 0 && extra.nextDouble() < share;
    }
}
