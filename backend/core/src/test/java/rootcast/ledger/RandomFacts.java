package rootcast.ledger;

import java.util.List;
import java.util.Random;
import java.util.UUID;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.ledger.PlainBooks.Bench;
import rootcast.ledger.PlainBooks.Fact;

/** What people might enter of a small batch: mostly possible, often just over an edge, sometimes nonsense. */
final class RandomFacts {

    static final List<String> HOUSES = List.of("A", "B", "C");

    private static final List<Cause> CAUSES = List.of(Cause.ROT, Cause.PEST, Cause.NO_ROOT);
    private static final List<OrderLine> LINES =
            List.of(new OrderLine(new UUID(7, 1), 1), new OrderLine(new UUID(7, 1), 2));

    private final Random random;

    RandomFacts(long seed) {
        random = new Random(seed);
    }

    int upTo(int most) {
        return random.nextInt(most + 1);
    }

    boolean oneIn(int cases) {
        return random.nextInt(cases) == 0;
    }

    Random random() {
        return random;
    }

    /** The minute of something written at {@code now}: mostly now, often earlier, seldom still to come. */
    int happened(int now) {
        return oneIn(3) ? upTo(now) : oneIn(15) ? now + 1 + upTo(2) : now;
    }

    TrayFormat format() {
        int cells = 2 + upTo(8);
        return new TrayFormat("small", cells, 1 + upTo(cells - 1), 300, 200);
    }

    What stick(TrayFormat format) {
        int trays = 1 + upTo(5);
        int most = trays * format.cells();
        if (oneIn(20)) {
            return new What.Stick(one(HOUSES), oneIn(2) ? 0 : 20_001, 1);
        }
        return new What.Stick(one(HOUSES), trays, most + 1 - upTo(most / 3 + 2));
    }

    /** Something that happened to the batch at this minute. */
    What next(PlainBooks books, TrayFormat format, int minute) {
        Bench bench = books.at(minute);
        int kind = upTo(23);
        if (kind < 5) {
            return new What.Loss(oneIn(8) ? bench.alive + upTo(2) : upTo(bench.alive / 3 + 1), one(CAUSES));
        }
        if (kind < 8) {
            return new What.Count(oneIn(4) ? upTo(bench.in + 1) - upTo(1) : Math.max(0, bench.alive + 3 - upTo(6)));
        }
        if (kind < 10) {
            int trays = oneIn(8) ? upTo(7) : 1 + upTo(Math.max(0, bench.traysHere() - 1));
            int cells = oneIn(8) ? upTo(60) : 1 + upTo(Math.max(0, trays * format.cells() - 1));
            return new What.SampledCount(new Sample(trays, cells, upTo(cells + 1) - (oneIn(8) ? 1 : 0)));
        }
        if (kind < 14) {
            Stage[] stages = Stage.values();
            int following = Math.min(bench.seen.ordinal() + 1, stages.length - 1);
            return new What.StageReached(oneIn(3) ? stages[upTo(stages.length - 1)] : stages[following]);
        }
        if (kind < 16) {
            return new What.Move(one(HOUSES));
        }
        if (kind < 21) {
            int saleable = bench.alive / format.saleCount();
            int trays = oneIn(6) ? saleable + upTo(2) : upTo(saleable);
            int plants = trays * format.saleCount() + upTo(3) - (oneIn(8) ? 1 : 0);
            return new What.Ship(trays, plants, oneIn(3) ? null : one(LINES));
        }
        if (kind < 22) {
            Stage[] asked = {Stage.CALLUS, Stage.ROOT, Stage.READY};
            int cells = oneIn(6) ? upTo(60) : 1 + upTo(Math.max(0, bench.alive - 1));
            return new What.Look(asked[upTo(2)], cells, oneIn(8) ? cells + 1 - upTo(1) * (cells + 2) : upTo(cells));
        }
        List<Fact> facts = books.facts();
        boolean nobodys = facts.isEmpty() || oneIn(10);
        return new What.Reversal(nobodys ? new UUID(3, 3) : one(facts).id(), "a slip");
    }

    private <T> T one(List<T> list) {
        return list.get(random.nextInt(list.size()));
    }
}
