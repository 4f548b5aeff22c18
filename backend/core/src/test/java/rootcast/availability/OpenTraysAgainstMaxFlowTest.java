package rootcast.availability;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.TreeSet;
import org.junit.jupiter.api.Test;

/** Random cells against the max-flow oracle, every date of every cell. */
class OpenTraysAgainstMaxFlowTest {

    private static final int CELLS = 5_000;
    private static final List<LocalDate> DATES = Periods.periods(1, RandomCells.PERIODS);

    @Test
    void everyDateOfEveryCellAgrees() {
        var cells = new RandomCells(20261125);
        int withSeveralLevels = 0;
        int notFitting = 0;
        int limitedAcrossAGap = 0;
        for (int run = 0; run < CELLS; run++) {
            CellSupply supply = cells.next(run % 3 == 0).supply();
            double confidence = cells.confidence();
            OpenTrays open = OpenTrays.of(supply, DATES);
            OpenAt figures = open.at(confidence);
            for (LocalDate date : DATES) {
                assertThat(figures.open(date))
                        .as("seed 20261125 run %d at %s on %s: %s", run, confidence, date, supply)
                        .isEqualTo(openByMaxFlow(supply, date, confidence));
                limitedAcrossAGap += onlyASetWithAGapLimits(supply, figures, date, confidence) ? 1 : 0;
            }
            boolean fits = levels(supply).stream().allMatch(level -> new MaxFlow(supply, level).everythingFits());
            assertThat(open.everyPromiseFits())
                    .as("seed 20261125 run %d: %s", run, supply)
                    .isEqualTo(fits);
            withSeveralLevels += levels(supply).size() > 1 ? 1 : 0;
            notFitting += fits ? 0 : 1;
        }
        assertThat(withSeveralLevels).as("cells with several levels").isGreaterThan(1_000);
        assertThat(notFitting)
                .as("cells whose promises do not fit")
                .isGreaterThan(500)
                .isLessThan(CELLS - 500);
        assertThat(limitedAcrossAGap)
                .as("dates that no contiguous run limits as much")
                .isGreaterThan(100);
    }

    @Test
    void placingWhatIsOpenFitsAndOneTrayMoreDoesNot() {
        var cells = new RandomCells(42);
        int withSomethingOpen = 0;
        for (int run = 0; run < 8_000; run++) {
            CellSupply supply = cells.next(false).supply();
            double confidence = cells.confidence();
            OpenTrays open = OpenTrays.of(supply, DATES);
            if (!open.everyPromiseFits()) {
                continue;
            }
            LocalDate date = Periods.period(cells.period());
            int most = open.at(confidence).open(date);

            assertThat(fitsByMaxFlow(supply.plus(promise(date, most, confidence))))
                    .as("seed 42 run %d: %d on %s at %s with %s", run, most, date, confidence, supply)
                    .isTrue();
            assertThat(fitsByMaxFlow(supply.plus(promise(date, most + 1, confidence))))
                    .as("seed 42 run %d: %d on %s at %s with %s", run, most + 1, date, confidence, supply)
                    .isFalse();
            withSomethingOpen += most > 0 ? 1 : 0;
        }
        assertThat(withSomethingOpen).isGreaterThan(1_000);
    }

    @Test
    void oneMorePromiseRaisesNoDateAndOneMoreLotLowersNone() {
        var cells = new RandomCells(7);
        int lowered = 0;
        int raised = 0;
        for (int run = 0; run < 3_000; run++) {
            Periods cell = cells.next(false);
            double confidence = cells.confidence();
            List<Integer> before = cell.open(1, RandomCells.PERIODS, confidence);
            cells.addPromise(cell, cells.confidence(), 5);
            List<Integer> withPromise = cell.open(1, RandomCells.PERIODS, confidence);
            cells.addLot(cell, "more");
            List<Integer> withLot = cell.open(1, RandomCells.PERIODS, confidence);
            for (int i = 0; i < before.size(); i++) {
                assertThat(withPromise.get(i))
                        .as("seed 7 run %d date %d", run, i)
                        .isLessThanOrEqualTo(before.get(i));
                assertThat(withLot.get(i))
                        .as("seed 7 run %d date %d", run, i)
                        .isGreaterThanOrEqualTo(withPromise.get(i));
            }
            lowered += withPromise.equals(before) ? 0 : 1;
            raised += withLot.equals(withPromise) ? 0 : 1;
        }
        assertThat(lowered).isGreaterThan(300);
        assertThat(raised).isGreaterThan(300);
    }

    @Test
    void openNeverGrowsWithTheConfidence() {
        var cells = new RandomCells(11);
        for (int run = 0; run < 2_000; run++) {
            OpenTrays open = OpenTrays.of(cells.next(false).supply(), DATES);
            for (LocalDate date : DATES) {
                int before = Integer.MAX_VALUE;
                for (double confidence : new double[] {0.3, 0.5, 0.65, 0.8, 0.85, 0.9, 0.99}) {
                    int now = open.at(confidence).open(date);
                    assertThat(now).as("seed 11 run %d at %s", run, confidence).isLessThanOrEqualTo(before);
                    before = now;
                }
            }
        }
    }

    @Test
    void theNamedLimitHoldsWhatItSays() {
        var cells = new RandomCells(13);
        for (int run = 0; run < 2_000; run++) {
            CellSupply supply = cells.next(false).supply();
            double confidence = cells.confidence();
            OpenAt figures = OpenTrays.of(supply, DATES).at(confidence);
            for (LocalDate date : DATES) {
                Limit limit = figures.limit(date);
                assertThat(limit.dates()).contains(date).isSorted();
                assertThat(limit.confidence()).isLessThanOrEqualTo(confidence);
                assertThat(limit.capacity()).isEqualTo(capacity(supply, limit.dates(), limit.confidence()));
                assertThat(limit.promised()).isEqualTo(promised(supply, limit.dates(), limit.confidence()));
                assertThat(Math.max(0, limit.slack())).isEqualTo(figures.open(date));
            }
        }
    }

    private static int openByMaxFlow(CellSupply supply, LocalDate date, double confidence) {
        long least = new MaxFlow(supply, confidence).beyondBooked(date);
        for (double level : levels(supply)) {
            if (level < confidence) {
                least = Math.min(least, new MaxFlow(supply, level).beyondBooked(date));
            }
        }
        return (int) Math.max(0, least);
    }

    private static boolean fitsByMaxFlow(CellSupply supply) {
        return levels(supply).stream().allMatch(level -> new MaxFlow(supply, level).everythingFits());
    }

    private static TreeSet<Double> levels(CellSupply supply) {
        var levels = new TreeSet<Double>();
        supply.promises().forEach(promise -> levels.add(promise.confidence()));
        return levels;
    }

    private static Promise promise(LocalDate date, int trays, double confidence) {
        return new Promise("new", 1, date, trays, confidence, 1_000);
    }

    /** Whether each run of neighbouring dates around the date leaves more slack than the figure. */
    private static boolean onlyASetWithAGapLimits(
            CellSupply supply, OpenAt figures, LocalDate date, double confidence) {
        Limit limit = figures.limit(date);
        if (limit.confidence() != confidence || limit.dates().size() < 2) {
            return false;
        }
        int at = DATES.indexOf(date);
        for (int from = 0; from <= at; from++) {
            for (int until = at + 1; until <= DATES.size(); until++) {
                List<LocalDate> run = DATES.subList(from, until);
                if (capacity(supply, run, confidence) - promised(supply, run, confidence) <= limit.slack()) {
                    return false;
                }
            }
        }
        return true;
    }

    private static int capacity(CellSupply supply, List<LocalDate> set, double confidence) {
        int sum = 0;
        for (SupplyLot lot : supply.lots()) {
            sum += set.stream()
                    .mapToInt(date -> lot.traysAt(date, confidence))
                    .max()
                    .orElse(0);
        }
        return sum;
    }

    private static int promised(CellSupply supply, List<LocalDate> set, double confidence) {
        return supply.promises().stream()
                .filter(promise -> promise.confidence() >= confidence && set.contains(promise.shipOn()))
                .mapToInt(Promise::trays)
                .sum();
    }
}
