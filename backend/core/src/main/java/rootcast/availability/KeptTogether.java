package rootcast.availability;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.List;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import rootcast.outlook.World;

/**
 * In which of {@value #WORLDS} worlds that may come each promise of a cell is kept in full; so the chance of one promise, and of
 * several together, whatever their lots have in common ({@link World}).
 *
 * <p>In a world it is known how many trays of each lot can leave on each day. Promises are taken in by {@link Allotment#SENIORITY}, each keeps as
 * many as fit beside those before it; if all fit, all are kept. That is the best that anybody could do who knew the world: whoever ships day by
 * day, and first what ends first, does as well.
 *
 * <p>The same worlds come for every cell, so {@link #worldsOf} of promises in different cells may be put together. A chance of 90 % is out by
 * one point as often as not less (standard error 0.95).
 */
public final class KeptTogether {

    public static final int WORLDS = 1_000;

    private final List<Promise> promises;
    private final List<BitSet> kept;

    private KeptTogether(List<Promise> promises, List<BitSet> kept) {
        this.promises = promises;
        this.kept = kept;
    }

    /** @param crop code of the cell's crop */
    public static KeptTogether of(CellSupply supply, String crop) {
        List<Promise> promises = supply.promises();
        List<BitSet> kept = new ArrayList<>();
        promises.forEach(promise -> kept.add(new BitSet(WORLDS)));
        if (!promises.isEmpty()) {
            Walk walk = new Walk(supply, crop);
            for (int world = 0; world < WORLDS; world++) {
                int[] trays = walk.keptIn(new World(world));
                for (int i = 0; i < trays.length; i++) {
                    kept.get(i).set(world, trays[i] == promises.get(i).trays());
                }
            }
        }
        return new KeptTogether(promises, kept);
    }

    /** The worlds in which a promise is kept in full, by their numbers; the caller's own. */
    public BitSet worldsOf(Promise promise) {
        return (BitSet) kept.get(promises.indexOf(promise)).clone();
    }

    public double chance(Promise promise) {
        return chance(List.of(promise));
    }

    /** That all of these are kept in full; null if there is none. */
    public @Nullable Double chanceOfAll(List<Promise> together) {
        return together.isEmpty() ? null : chance(together);
    }

    private double chance(List<Promise> together) {
        BitSet all = worldsOf(together.get(0));
        together.forEach(promise -> all.and(kept.get(promises.indexOf(promise))));
        return (double) all.cardinality() / WORLDS;
    }

    private static final class Walk {

        private final List<Promise> promises;
        private final ListedDates dates;
        private final int[] dueOn;
        private final int[] bySeniority;
        private final List<LocalDate> days;
        private final List<TraysByWorld.OfLot> lots;
        private final long[] all;

        Walk(CellSupply supply, String crop) {
            promises = supply.promises();
            dates = ListedDates.of(promises, List.of(), supply.today());
            dueOn = Allotment.dueOn(supply, dates);
            bySeniority = Allotment.bySeniority(promises);
            days = IntStream.rangeClosed(1, dates.count()).mapToObj(dates::date).toList();
            lots = supply.lots().stream().map(lot -> lot.worlds().of(crop)).toList();
            all = new long[dates.count() + 2];
            for (int i = 0; i < dueOn.length; i++) {
                all[dueOn[i]] += promises.get(i).trays();
            }
        }

        int[] keptIn(World world) {
            List<int[]> trays = new ArrayList<>(lots.size());
            for (TraysByWorld.OfLot lot : lots) {
                trays.add(risingThenFalling(lot.trays(world, days)));
            }
            LotsAtConfidence there = LotsAtConfidence.inWorld(dates.count(), trays);
            if (new LeastSlack(there, all).everyPromiseFits()) {
                return promises.stream().mapToInt(Promise::trays).toArray();
            }
            int[] kept = new int[promises.size()];
            long[] taken = new long[dates.count() + 2];
            for (int i : bySeniority) {
                long slack = new LeastSlack(there, taken).at(dueOn[i]);
                kept[i] = (int) Math.min(promises.get(i).trays(), Math.max(0, slack));
                taken[dueOn[i]] += kept[i];
            }
            return kept;
        }

        /** By date number. Where a cold week makes fewer of them and then more, those that were lost do not come back. */
        private static int[] risingThenFalling(int[] trays) {
            int most = 0;
            for (int i = 0; i < trays.length; i++) {
                most = trays[i] > trays[most] ? i : most;
            }
            int[] byDate = new int[trays.length + 1];
            for (int i = most, least = trays[most]; i >= 0; i--) {
                least = Math.min(least, trays[i]);
                byDate[i + 1] = least;
            }
            for (int i = most, least = trays[most]; i < trays.length; i++) {
                least = Math.min(least, trays[i]);
                byDate[i + 1] = least;
            }
            return byDate;
        }
    }
}
