package rootcast.app.demo;

import java.time.Instant;
import java.util.SplittableRandom;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Band;
import rootcast.ledger.BatchState;
import rootcast.ledger.Sample;
import rootcast.ledger.What;
import rootcast.rounds.Arrival;
import rootcast.rounds.RoundItem;

/** What people of the demo see when they do an item of the round: as it should be, and drawn from the item's own seed. */
final class RoundFindings {

    private static final int MOST_GNATS = 7;
    private static final int WILTED_ONE_IN = 12;

    /** Between the least that the recipe wants of rooted liners and the most. */
    private static final double LEAST_EC_MS_PER_CM = 0.95;

    private static final double MOST_EC_MS_PER_CM = 1.6;

    private RoundFindings() {}

    static SplittableRandom drawnFor(RoundItem item) {
        return SeededDraw.of(DemoScenario.SEED, item.id(), 0);
    }

    static DemoCare.Found arrival(SplittableRandom random) {
        Arrival.Condition condition =
                random.nextInt(WILTED_ONE_IN) == 0 ? Arrival.Condition.WILTED : Arrival.Condition.FRESH;
        return DemoCare.Found.arrived(new Arrival(condition, 8 + random.nextInt(13) / 2.0, 1.0 + random.nextInt(5)));
    }

    static DemoCare.Found moisture(Band level, SplittableRandom random) {
        int least = (int) Math.ceil(level.least());
        return DemoCare.Found.level(least + random.nextInt((int) Math.floor(level.most()) - least + 1));
    }

    static DemoCare.Found salts(SplittableRandom random) {
        double msPerCm = LEAST_EC_MS_PER_CM + (MOST_EC_MS_PER_CM - LEAST_EC_MS_PER_CM) * random.nextDouble();
        return DemoCare.Found.ec(Math.round(msPerCm * 100) / 100.0, null);
    }

    static DemoCare.Found traps(SplittableRandom random) {
        return DemoCare.Found.trapped(random.nextInt(MOST_GNATS + 1));
    }

    /**
     * A sample of some trays, at random among the living plants of the books; of liners that were counted for sale, all of
     * them again. Null where a sample cannot be drawn.
     */
    static @Nullable DemoEntry count(BatchState state, Instant at, String by, UUID id, SplittableRandom random) {
        What counted = state.fullCount() == null ? sample(state, random) : new What.Count(state.alivePlants());
        return counted == null
                ? null
                : new DemoEntry(id, state.batch().id(), at, at.plusSeconds(120), by, counted, null);
    }

    private static @Nullable What sample(BatchState state, SplittableRandom random) {
        int trays = Math.max(1, state.benchTrays() / 6);
        int cells = trays * state.batch().trayFormat().cells();
        if (cells > state.places()) {
            return null;
        }
        double blankShare = 1 - (double) state.alivePlants() / state.places();
        int blanks = 0;
        for (int cell = 0; cell < cells; cell++) {
            blanks += random.nextDouble() < blankShare ? 1 : 0;
        }
        return new What.SampledCount(new Sample(trays, cells, blanks));
    }
}
