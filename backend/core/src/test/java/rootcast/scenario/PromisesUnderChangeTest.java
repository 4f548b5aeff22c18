package rootcast.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.function.Supplier;
import org.junit.jupiter.api.Test;
import rootcast.availability.Allotment;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.availability.KeptPromise;
import rootcast.availability.MatchRules;
import rootcast.availability.Placing;
import rootcast.availability.Promise;
import rootcast.availability.Share;
import rootcast.availability.Shortfall;
import rootcast.availability.WantedLine;

/**
 * Orders of several confidences come and go, trays leave, outlooks turn and days pass: random sequences of one cell, each
 * step against the max-flow oracle.
 */
class PromisesUnderChangeTest {

    private static final long SEED = 20260302;
    private static final int SEQUENCES = 10_000;
    private static final double[] CONFIDENCES = {0.5, 0.8, 0.9};
    private static final Cell CELL = new Cell("lav-blue", "T105", "north");

    private final Random random = new Random(SEED);
    private final Map<String, Integer> seen = new HashMap<>();
    private List<RandomLot> lots = new ArrayList<>();
    private List<Promise> promises = new ArrayList<>();
    private LocalDate today = RandomLot.FIRST_DAY;
    private long position;

    @Test
    void whatIsPromisedFitsWhenItIsPromisedAndIsNamedOnceItNoLongerDoes() {
        for (int run = 0; run < SEQUENCES; run++) {
            begin();
            String in = "seed %d run %d".formatted(SEED, run);
            Supplier<String> as = () -> "%s on %s: lots %s promises %s".formatted(in, today, lots, promises);
            int operations = 4 + random.nextInt(5);
            for (int operation = 0; operation < operations; operation++) {
                switch (random.nextInt(9)) {
                    case 0, 1, 2, 3 -> order(as);
                    case 4 -> release();
                    case 5 -> ship();
                    case 6 -> turnWorse();
                    case 7 -> turnBetter();
                    default -> today = today.plusDays(1);
                }
                everyPromiseIsThereAndThoseAtRiskAreNamed(as);
            }
        }
        assertThat(seen)
                .allSatisfy((what, times) -> assertThat(times).as("%s among %s", what, seen).isGreaterThan(1_000))
                .containsOnlyKeys("accepted", "refused", "accepted beside a shortfall", "shipped", "all kept", "some at risk");
    }

    private void begin() {
        lots = new ArrayList<>();
        promises = new ArrayList<>();
        today = RandomLot.FIRST_DAY;
        for (int lot = 1 + random.nextInt(3); lot > 0; lot--) {
            addLot();
        }
    }

    private void order(Supplier<String> as) {
        double confidence = CONFIDENCES[random.nextInt(CONFIDENCES.length)];
        List<WantedLine> lines = new ArrayList<>();
        for (int line = 1; line <= 1 + random.nextInt(2); line++) {
            LocalDate shipOn = today.plusDays(random.nextInt(RandomLot.DAYS - 2) - 1);
            lines.add(new WantedLine(line, CELL, shipOn, 1 + random.nextInt(5)));
        }
        List<Promise> together = new ArrayList<>(promises);
        boolean eachWasOpen = true;
        position++;
        for (WantedLine line : lines) {
            boolean past = line.shipOn().isBefore(today);
            eachWasOpen &= !past && line.trays() <= new PromiseFlow(lots, together, today).open(line.shipOn(), confidence);
            together.add(new Promise("o" + position, line.line(), line.shipOn(), line.trays(), confidence, position));
        }
        boolean allKept = new PromiseFlow(lots, promises, today).everythingFits();

        Placing placing = MatchRules.place(lines, confidence, cell -> supply());

        boolean accepted = placing instanceof Placing.Accepted;
        assertThat(accepted).as(as).isEqualTo(eachWasOpen);
        if (allKept && lines.stream().noneMatch(line -> line.shipOn().isBefore(today))) {
            assertThat(new PromiseFlow(lots, together, today).everythingFits()).as(as).isEqualTo(accepted);
        }
        if (accepted) {
            promises = together;
        }
        saw(!accepted ? "refused" : allKept ? "accepted" : "accepted beside a shortfall");
    }

    private void release() {
        if (!promises.isEmpty()) {
            String order = promises.get(random.nextInt(promises.size())).order();
            promises.removeIf(promise -> promise.order().equals(order));
        }
    }

    /** Trays of one batch leave for a promise that is due, at most those that stand behind it. */
    private void ship() {
        for (KeptPromise each : Allotment.of(supply()).promises()) {
            Promise due = each.promise();
            if (due.dueOn(today).equals(today) && !each.shares().isEmpty()) {
                Share share = each.shares().get(0);
                int trays = 1 + random.nextInt(share.trays());
                lots.replaceAll(lot -> lot.batch().equals(share.batch()) ? lot.without(trays) : lot);
                promises.remove(due);
                if (trays < due.trays()) {
                    promises.add(new Promise(due.order(), due.line(), due.shipOn(), due.trays() - trays, due.confidence(), due.position()));
                }
                saw("shipped");
                return;
            }
        }
    }

    private void turnWorse() {
        if (!lots.isEmpty()) {
            int which = random.nextInt(lots.size());
            switch (random.nextInt(3)) {
                case 0 -> lots.remove(which);
                case 1 -> lots.set(which, lots.get(which).without(1 + random.nextInt(4)));
                default -> lots.set(which, lots.get(which).later());
            }
        }
    }

    private void turnBetter() {
        if (lots.isEmpty() || random.nextBoolean()) {
            addLot();
        } else {
            int which = random.nextInt(lots.size());
            lots.set(which, lots.get(which).with(1 + random.nextInt(3)));
        }
    }

    private void addLot() {
        lots.add(RandomLot.of("L" + position++, random));
    }

    private void everyPromiseIsThereAndThoseAtRiskAreNamed(Supplier<String> as) {
        boolean fits = new PromiseFlow(lots, promises, today).everythingFits();
        Allotment allotment = Allotment.of(supply());
        List<Shortfall> named = Shortfall.of(supply());

        assertThat(allotment.promises()).extracting(KeptPromise::promise).as(as).isEqualTo(promises);
        assertThat(named.isEmpty()).as(as).isEqualTo(fits);
        Map<Promise, Integer> missing = new HashMap<>();
        named.forEach(shortfall -> missing.put(shortfall.promise(), shortfall.trays()));
        List<Promise> kept = new ArrayList<>();
        for (Promise each : promises) {
            int trays = each.trays() - missing.getOrDefault(each, 0);
            assertThat(missing.getOrDefault(each, 1)).as(as).isBetween(1, each.trays());
            kept.add(new Promise(each.order(), each.line(), each.shipOn(), trays, each.confidence(), each.position()));
        }
        assertThat(promises).as(as).containsAll(missing.keySet());
        if (!fits) {
            assertThat(new PromiseFlow(lots, kept, today).everythingFits()).as(as).isTrue();
        }
        saw(fits ? "all kept" : "some at risk");
    }

    private CellSupply supply() {
        return new CellSupply(lots.stream().map(RandomLot::supply).toList(), promises, today);
    }

    private void saw(String what) {
        seen.merge(what, 1, Integer::sum);
    }
}
