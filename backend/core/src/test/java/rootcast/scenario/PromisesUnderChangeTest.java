package rootcast.scenario;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
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
            int operations = 5 + random.nextInt(6);
            for (int operation = 0; operation < operations; operation++) {
                switch (random.nextInt(10)) {
                    case 0, 1, 2, 3 -> order(as);
                    case 4 -> release();
                    case 5 -> ship();
                    case 6, 7 -> turnWorse();
                    case 8 -> turnBetter();
                    default -> today = today.plusDays(1);
                }
                everyPromiseIsThereAndThoseAtRiskAreNamed(as);
            }
        }
        assertThat(seen)
                .allSatisfy((what, times) ->
                        assertThat(times).as("%s among %s", what, seen).isGreaterThan(100))
                .containsOnlyKeys(
                        "accepted",
                        "refused",
                        "accepted beside a shortfall",
                        "released",
                        "shipped",
                        "all kept",
                        "some at risk");
    }

    private void begin() {
        lots = new ArrayList<>();
        promises = new ArrayList<>();
        today = RandomLot.FIRST_DAY;
        for (int lot = 2 + random.nextInt(3); lot > 0; lot--) {
            addLot();
        }
    }

    private void order(Supplier<String> as) {
        double confidence = CONFIDENCES[random.nextInt(CONFIDENCES.length)];
        List<WantedLine> lines = new ArrayList<>();
        int lineCount = random.nextInt(3) == 0 ? 2 : 1;
        for (int line = 1; line <= lineCount; line++) {
            int days = random.nextInt(20) == 0 ? -1 : random.nextInt(RandomLot.DAYS);
            lines.add(new WantedLine(line, CELL, today.plusDays(days), 1 + random.nextInt(4)));
        }
        List<Promise> together = new ArrayList<>(promises);
        boolean eachWasOpen = true;
        position++;
        for (WantedLine line : lines) {
            boolean past = line.shipOn().isBefore(today);
            eachWasOpen &=
                    !past && line.trays() <= new PromiseFlow(lots, together, today).open(line.shipOn(), confidence);
            together.add(new Promise("o" + position, line.line(), line.shipOn(), line.trays(), confidence, position));
        }
        Map<Double, Long> missing = new PromiseFlow(lots, promises, today).shortage();
        Map<Double, Long> missingTogether = new PromiseFlow(lots, together, today).shortage();
        boolean allKept = missing.values().stream().allMatch(trays -> trays == 0);

        Placing placing = MatchRules.place(lines, confidence, cell -> supply());

        boolean accepted = placing instanceof Placing.Accepted;
        assertThat(accepted).as(as).isEqualTo(eachWasOpen);
        if (accepted) {
            assertThat(missingTogether).as(as).containsAllEntriesOf(missing);
        }
        if (allKept && lines.stream().noneMatch(line -> line.shipOn().isBefore(today))) {
            boolean togetherFit = missingTogether.values().stream().allMatch(trays -> trays == 0);
            assertThat(togetherFit).as(as).isEqualTo(accepted);
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
            saw("released");
        }
    }

    /** The day of a promise comes, and trays of one batch leave for it, at most those that stand behind it. */
    private void ship() {
        if (!promises.isEmpty()) {
            today = promises.get(random.nextInt(promises.size())).dueOn(today);
        }
        for (KeptPromise each : Allotment.of(supply()).promises()) {
            Promise due = each.promise();
            if (due.dueOn(today).equals(today) && !each.shares().isEmpty()) {
                Share share = each.shares().get(0);
                int trays = 1 + random.nextInt(share.trays());
                lots.replaceAll(lot -> lot.batch().equals(share.batch()) ? lot.without(trays) : lot);
                promises.remove(due);
                if (trays < due.trays()) {
                    promises.add(new Promise(
                            due.order(),
                            due.line(),
                            due.shipOn(),
                            due.trays() - trays,
                            due.confidence(),
                            due.position()));
                }
                saw("shipped");
                return;
            }
        }
    }

    /** It strikes the lot with the most trays for today: that is where the promises are. */
    private void turnWorse() {
        if (!lots.isEmpty()) {
            lots.sort(Comparator.comparingInt(lot -> -lot.offers(today, CONFIDENCES[0])));
            int which = random.nextInt(Math.min(2, lots.size()));
            switch (random.nextInt(3)) {
                case 0 -> lots.remove(which);
                case 1 -> lots.set(which, lots.get(which).without(4 + random.nextInt(8)));
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
            assertThat(new PromiseFlow(lots, kept, today).everythingFits())
                    .as(as)
                    .isTrue();
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
