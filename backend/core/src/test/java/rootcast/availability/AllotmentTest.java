package rootcast.availability;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.availability.Periods.period;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Who keeps a promise when not all can, and from which batch. Small cases by hand, many against the max-flow oracle. */
class AllotmentTest {

    @Test
    void theLotThatEndsFirstIsUsedFirst() {
        var cell = new Periods().lot("late", 1, 9, 10).lot("early", 2, 4, 6).order(3, 8);

        assertThat(only(cell).shares()).containsExactly(new Share("early", 6), new Share("late", 2));
    }

    /**
     * A ends on 6 and B on 5, but tray 3 of A ends on 3 and tray 2 on 4. On 3 that tray 3 goes first, then tray 2 of A, then B;
     * so on 5 the first tray of A is still there.
     */
    @Test
    void ofALotWhoseTraysEndOneAfterAnotherTheNextToEndIsUsedFirst() {
        var cell = new Periods()
                .offering("A", 1, 2, 3, 2, 1, 1)
                .offering("B", 0, 0, 1, 1, 1, 0)
                .order(3, 3)
                .order(6, 1);

        assertThat(Allotment.of(cell.supply()).promises())
                .extracting(KeptPromise::shares)
                .containsExactly(List.of(new Share("A", 2), new Share("B", 1)), List.of(new Share("A", 1)));
    }

    @Test
    void thePromiseMadeLaterIsShortAndKeepsWhatIsLeft() {
        var cell = new Periods().lot("A", 1, 5, 10).order(4, 7).order(2, 6);

        assertThat(Allotment.of(cell.supply()).promises())
                .extracting(KeptPromise::keptTrays)
                .containsExactly(7, 3);
        assertThat(Shortfall.of(cell.supply()))
                .containsExactly(new Shortfall(cell.supply().promises().get(1), 3));
    }

    @Test
    void anEarlierShipDateDoesNotBeatAnOlderPromise() {
        var older = new Promise("o2", 1, period(5), 10, 0.9, 1);
        var newer = new Promise("o1", 1, period(1), 10, 0.9, 2);
        var lots = new Periods().lot("A", 1, 5, 10).supply().lots();

        var kept = Allotment.of(new CellSupply(lots, List.of(newer, older), period(1)))
                .promises();

        assertThat(kept).extracting(KeptPromise::kept).containsExactly(false, true);
    }

    @Test
    void aMoreCertainPromiseGoesBeforeAnOlderLessCertainOne() {
        var cell = new Periods().lot("A", 1, 5, 10).order(2, 8, 0.5).order(2, 8, 0.9);

        assertThat(Allotment.of(cell.supply()).promises())
                .extracting(KeptPromise::keptTrays)
                .containsExactly(2, 8);
    }

    @Test
    void aPromiseNobodyCanServeAnyMoreIsNamedAndNotDropped() {
        var cell = new Periods().lot("A", 1, 2, 10).order(4, 3);

        assertThat(only(cell))
                .isEqualTo(new KeptPromise(cell.supply().promises().get(0), 0, List.of()));
        assertThat(Shortfall.of(cell.supply())).extracting(Shortfall::trays).containsExactly(3);
    }

    @Test
    void promisesThatHoldOnlyInDifferentWorldsStillGetBatches() {
        // At 0.9 only A's 10 count. At 0.5 B's 10 count too, but end on 1: then A is free for the even bet on 2.
        var cell = new Periods()
                .lot("A", 1, 2, 10)
                .lot("B", new double[] {0.6}, Periods.certain(10), 1)
                .order(1, 10, 0.9)
                .order(2, 10, 0.5);

        assertThat(Allotment.of(cell.supply()).promises())
                .extracting(KeptPromise::shares)
                .containsExactly(List.of(new Share("B", 10)), List.of(new Share("A", 10)));
        assertThat(OpenTrays.of(cell.supply(), List.of()).everyPromiseFits()).isTrue();
    }

    @Test
    void anEvenBetLeavesTheSureTraysOfALotToASurePromise() {
        // One lot: 10 trays at 0.9, 20 at 0.5. The even bet is due first and must not use up the sure ten.
        double[] tail = Periods.certain(20);
        Arrays.fill(tail, 11, 21, 0.6);
        var cell = new Periods()
                .lot("A", new double[] {1}, tail, 5)
                .order(1, 10, 0.5)
                .order(2, 10, 0.9);

        assertThat(Allotment.of(cell.supply()).promises())
                .extracting(KeptPromise::keptTrays)
                .containsExactly(10, 10);
    }

    @Nested
    class OnRandomCells {

        @Test
        void ofOneConfidenceKeepsAsManyTraysAsAnyMethodCould() {
            var cells = new RandomCells(20260301);
            int notFitting = 0;
            for (int run = 0; run < 3_000; run++) {
                CellSupply supply = cells.next(true).supply();
                var oracle = new MaxFlow(supply, 0.9);

                assertThat(Allotment.of(supply).keptTrays())
                        .as("seed 20260301 run %d: %s", run, supply)
                        .isEqualTo(oracle.kept());
                notFitting += oracle.everythingFits() ? 0 : 1;
            }
            assertThat(notFitting).isGreaterThan(500);
        }

        @Test
        void everyLevelAddsAsManyTraysToThoseAboveItAsAnyMethodCould() {
            var cells = new RandomCells(5);
            for (int run = 0; run < 3_000; run++) {
                CellSupply supply = cells.next(false).supply();
                var allotment = Allotment.of(supply);
                for (double level : new double[] {0.9, 0.8, 0.5}) {
                    List<Promise> considered = new ArrayList<>();
                    long kept = 0;
                    for (KeptPromise each : allotment.promises()) {
                        Promise promise = each.promise();
                        if (promise.confidence() > level) {
                            considered.add(withTrays(promise, each.keptTrays()));
                        } else if (promise.confidence() == level) {
                            considered.add(promise);
                        }
                        kept += promise.confidence() >= level ? each.keptTrays() : 0;
                    }
                    assertThat(kept)
                            .as("seed 5 run %d level %s: %s", run, level, supply)
                            .isEqualTo(new MaxFlow(new CellSupply(supply.lots(), considered, supply.today()), level)
                                    .kept());
                }
            }
        }

        @Test
        void oneMorePromiseOfTheSameConfidenceCostsNoOlderOneATray() {
            var cells = new RandomCells(99);
            for (int run = 0; run < 2_000; run++) {
                Periods cell = cells.next(true);
                var before = Allotment.of(cell.supply()).promises();
                cells.addPromise(cell, 0.9, 6);
                var after = Allotment.of(cell.supply()).promises();

                for (int i = 0; i < before.size(); i++) {
                    assertThat(after.get(i).keptTrays())
                            .as("seed 99 run %d promise %d", run, i)
                            .isEqualTo(before.get(i).keptTrays());
                }
            }
        }

        @Test
        void sharesAddUpToTheKeptTraysAndComeFromUsableLots() {
            var cells = new RandomCells(3);
            for (int run = 0; run < 3_000; run++) {
                CellSupply supply = cells.next(false).supply();
                double lowest = supply.promises().stream()
                        .mapToDouble(Promise::confidence)
                        .min()
                        .orElse(1);
                Map<String, Integer> used = new HashMap<>();
                for (KeptPromise each : Allotment.of(supply).promises()) {
                    int sum = 0;
                    for (Share share : each.shares()) {
                        assertThat(share.trays())
                                .isPositive()
                                .isLessThanOrEqualTo(lot(supply, share)
                                        .traysAt(each.promise().shipOn(), lowest));
                        used.merge(share.batch(), share.trays(), Integer::sum);
                        sum += share.trays();
                    }
                    assertThat(sum).as("seed 3 run %d: %s", run, supply).isEqualTo(each.keptTrays());
                }
                used.forEach((batch, trays) -> assertThat(trays)
                        .isLessThanOrEqualTo(MaxFlow.trays(lot(supply, new Share(batch, 0)), lowest)
                                .size()));
            }
        }

        /** With one confidence a batch never serves more promises than the windows of its own trays can. */
        @Test
        void whatABatchServesFitsTheWindowsOfItsTrays() {
            var cells = new RandomCells(21);
            int served = 0;
            for (int run = 0; run < 3_000; run++) {
                CellSupply supply = cells.next(true).supply();
                for (SupplyLot lot : supply.lots()) {
                    List<Promise> byThis = new ArrayList<>();
                    for (KeptPromise each : Allotment.of(supply).promises()) {
                        int trays = each.shares().stream()
                                .filter(share -> share.batch().equals(lot.batch()))
                                .mapToInt(Share::trays)
                                .sum();
                        byThis.add(withTrays(each.promise(), trays));
                    }
                    var alone = new MaxFlow(new CellSupply(List.of(lot), byThis, supply.today()), 0.9);
                    assertThat(alone.everythingFits())
                            .as("seed 21 run %d: %s", run, supply)
                            .isTrue();
                    served += alone.booked() > 0 ? 1 : 0;
                }
            }
            assertThat(served).isGreaterThan(1_000);
        }

        @Test
        void theOrderInWhichLotsAndPromisesAreListedChangesNothing() {
            var cells = new RandomCells(17);
            var shuffle = new Random(18);
            for (int run = 0; run < 1_000; run++) {
                CellSupply supply = cells.next(false).supply();
                List<SupplyLot> lots = new ArrayList<>(supply.lots());
                List<Promise> promises = new ArrayList<>(supply.promises());
                Collections.shuffle(lots, shuffle);
                Collections.shuffle(promises, shuffle);

                assertThat(Allotment.of(new CellSupply(lots, promises, supply.today()))
                                .promises())
                        .containsExactlyInAnyOrderElementsOf(
                                Allotment.of(supply).promises());
            }
        }

        private SupplyLot lot(CellSupply supply, Share share) {
            return supply.lots().stream()
                    .filter(lot -> lot.batch().equals(share.batch()))
                    .findFirst()
                    .orElseThrow();
        }

        private Promise withTrays(Promise promise, int trays) {
            return new Promise(
                    promise.order(), promise.line(), promise.shipOn(), trays, promise.confidence(), promise.position());
        }
    }

    private static KeptPromise only(Periods cell) {
        return Allotment.of(cell.supply()).promises().get(0);
    }
}
