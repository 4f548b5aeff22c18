package rootcast.ledger;

import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Stage;

/**
 * What a batch's entries add up to at one moment.
 *
 * @param reachedAt     when each of CALLUS, ROOT and READY was seen reached; a stage that nobody entered is absent
 * @param looks         looks at some cells for a stage, in the order of their moments
 * @param placements         houses in order, the last is where it stands now; empty before sticking
 * @param stuckPlants   plants taken in
 * @param alivePlants   plants alive by the book
 * @param lost          plants by cause; only a count difference may be negative
 * @param fullCount     the latest count of every plant, if there was one
 * @param sampledCount  the latest sampled count after it, if there was one
 * @param lossesSince   losses recorded for moments after the full count (or after sticking)
 * @param shippedSince  plants that left after it
 * @param shippedTo     trays shipped for each promise
 */
public record BatchState(
        Batch batch,
        Map<Stage, Instant> reachedAt,
        List<LookAt> looks,
        List<Placement> placements,
        int stuckTrays,
        int shippedTrays,
        int stuckPlants,
        int alivePlants,
        int shippedPlants,
        Map<Cause, Integer> lost,
        @Nullable PlantsAt fullCount,
        @Nullable SampledAt sampledCount,
        List<PlantsAt> lossesSince,
        List<PlantsAt> shippedSince,
        Map<OrderLine, Integer> shippedTo) {

    /** @param fromInclusive until the next placement begins */
    public record Placement(String house, Instant fromInclusive) {}

    /** Of {@code cells} looked at, {@code reached} had reached the stage. */
    public record LookAt(Instant at, Stage stage, int cells, int reached) {}

    public record PlantsAt(Instant at, int plants) {}

    /**
     * @param places      plants that could have been alive: cells on the bench, at most those stuck and not shipped
     * @param alivePlants the estimate that the books took
     */
    public record SampledAt(Instant at, Sample sample, int places, int alivePlants) {}

    static BatchState beforeSticking(Batch batch) {
        return new BatchState(
                batch, Map.of(), List.of(), List.of(), 0, 0, 0, 0, 0, Map.of(), null, null, List.of(), List.of(),
                Map.of());
    }

    /** Stage reached last; SHIP once trays have left and no plant is alive. */
    public Stage stage() {
        if (shippedPlants > 0 && alivePlants == 0) {
            return Stage.SHIP;
        }
        return reachedAt.keySet().stream().max(Stage::compareTo).orElse(Stage.STICK);
    }

    public boolean isStuck() {
        return !placements.isEmpty();
    }

    /** Plants of it are on a bench. */
    public boolean isLive() {
        return isStuck() && alivePlants != 0;
    }

    /** It was stuck, and no plant of it is left on a bench. */
    public boolean isFinished() {
        return isStuck() && alivePlants == 0;
    }

    public String house() {
        return placements.get(placements.size() - 1).house();
    }

    /** Where it stood at a moment; before it was stuck, the house it was stuck in. */
    public String houseAt(Instant at) {
        String house = placements.get(0).house();
        for (Placement placement : placements) {
            house = placement.fromInclusive().isAfter(at) ? house : placement.house();
        }
        return house;
    }

    /** Trays still on the bench. Patching can fill more sold trays than were stuck, so the difference stops at zero. */
    public int benchTrays() {
        return Math.max(0, stuckTrays - shippedTrays);
    }

    /** Plants that can be alive at most: cells on the bench, and no more than were stuck and have not left. */
    public int places() {
        return Math.min(benchTrays() * batch.trayFormat().cells(), stuckPlants - shippedPlants);
    }

    /** Trays that the living plants fill to the sale count today. */
    public int saleableTrays() {
        return alivePlants / batch.trayFormat().saleCount();
    }

    public int lostPlants() {
        return lost.values().stream().mapToInt(Integer::intValue).sum();
    }

    public Optional<Instant> reached(Stage wanted) {
        return Optional.ofNullable(reachedAt.get(wanted));
    }

    /** Every account of the batch that is not empty. */
    public Map<Account, Long> balances() {
        Map<Account, Long> balances = new LinkedHashMap<>();
        if (isStuck()) {
            balances.put(Account.SUPPLIER, -(long) stuckPlants);
            balances.put(Account.aliveIn(house()), (long) alivePlants);
            lost.forEach((cause, plants) -> balances.put(Account.lostTo(cause), (long) plants));
            balances.put(Account.SHIPPED, (long) shippedPlants);
        }
        balances.values().removeIf(plants -> plants == 0);
        return balances;
    }

    /** The batch after an entry that {@link EntryRules} allow. */
    BatchState after(Entry entry) {
        Change next = new Change(this);
        Instant at = entry.happenedAt();
        if (entry.what() instanceof What.Stick stick) {
            next.stuckTrays = stick.trays();
            next.stuckPlants = stick.plants();
            next.alivePlants = stick.plants();
            next.placements = List.of(new Placement(stick.house(), at));
        } else if (entry.what() instanceof What.Loss loss) {
            next.alivePlants -= loss.plants();
            next.lost = plus(lost, loss.cause(), loss.plants());
            next.lossesSince = plus(lossesSince, new PlantsAt(at, loss.plants()));
        } else if (entry.what() instanceof What.Count count) {
            next.count(at, count.plants());
        } else if (entry.what() instanceof What.SampledCount count) {
            next.sample(at, count.sample());
        } else if (entry.what() instanceof What.StageReached reached) {
            next.reachedAt = plus(reachedAt, reached.stage(), at);
        } else if (entry.what() instanceof What.Look look) {
            next.looks = plus(looks, new LookAt(at, look.stage(), look.cells(), look.reached()));
        } else if (entry.what() instanceof What.Move move) {
            next.placements = plus(placements, new Placement(move.house(), at));
        } else if (entry.what() instanceof What.Ship ship) {
            next.ship(at, ship);
        }
        return next.state();
    }

    private static <T> List<T> plus(List<T> list, T added) {
        List<T> longer = new ArrayList<>(list);
        longer.add(added);
        return List.copyOf(longer);
    }

    private static Map<Stage, Instant> plus(Map<Stage, Instant> reached, Stage stage, Instant at) {
        Map<Stage, Instant> more = new EnumMap<>(Stage.class);
        more.putAll(reached);
        more.put(stage, at);
        return Map.copyOf(more);
    }

    private static Map<Cause, Integer> plus(Map<Cause, Integer> lost, Cause cause, int plants) {
        Map<Cause, Integer> more = new EnumMap<>(Cause.class);
        more.putAll(lost);
        more.merge(cause, plants, Integer::sum);
        more.values().removeIf(sum -> sum == 0);
        return Map.copyOf(more);
    }

    /** The next state while it is being written. */
    private static final class Change {
        private final BatchState before;
        private Map<Stage, Instant> reachedAt;
        private List<LookAt> looks;
        private List<Placement> placements;
        private int stuckTrays;
        private int shippedTrays;
        private int stuckPlants;
        private int alivePlants;
        private int shippedPlants;
        private Map<Cause, Integer> lost;
        private @Nullable PlantsAt fullCount;
        private @Nullable SampledAt sampledCount;
        private List<PlantsAt> lossesSince;
        private List<PlantsAt> shippedSince;
        private Map<OrderLine, Integer> shippedTo;

        Change(BatchState before) {
            this.before = before;
            reachedAt = before.reachedAt;
            looks = before.looks;
            placements = before.placements;
            stuckTrays = before.stuckTrays;
            shippedTrays = before.shippedTrays;
            stuckPlants = before.stuckPlants;
            alivePlants = before.alivePlants;
            shippedPlants = before.shippedPlants;
            lost = before.lost;
            fullCount = before.fullCount;
            sampledCount = before.sampledCount;
            lossesSince = before.lossesSince;
            shippedSince = before.shippedSince;
            shippedTo = before.shippedTo;
        }

        void count(Instant at, int foundPlants) {
            bookDifference(foundPlants);
            fullCount = new PlantsAt(at, foundPlants);
            sampledCount = null;
            lossesSince = List.of();
            shippedSince = List.of();
        }

        void sample(Instant at, Sample sample) {
            int estimate = sample.alivePlants(before.places());
            bookDifference(estimate);
            sampledCount = new SampledAt(at, sample, before.places(), estimate);
        }

        private void bookDifference(int foundPlants) {
            lost = plus(lost, Cause.COUNT_DIFFERENCE, alivePlants - foundPlants);
            alivePlants = foundPlants;
        }

        void ship(Instant at, What.Ship ship) {
            alivePlants -= ship.plants();
            shippedPlants += ship.plants();
            shippedTrays += ship.trays();
            shippedSince = plus(shippedSince, new PlantsAt(at, ship.plants()));
            if (ship.orderLine() != null) {
                shippedTo = new HashMap<>(shippedTo);
                shippedTo.merge(ship.orderLine(), ship.trays(), Integer::sum);
                shippedTo = Map.copyOf(shippedTo);
            }
        }

        BatchState state() {
            return new BatchState(
                    before.batch,
                    reachedAt,
                    looks,
                    placements,
                    stuckTrays,
                    shippedTrays,
                    stuckPlants,
                    alivePlants,
                    shippedPlants,
                    lost,
                    fullCount,
                    sampledCount,
                    lossesSince,
                    shippedSince,
                    shippedTo);
        }
    }
}
