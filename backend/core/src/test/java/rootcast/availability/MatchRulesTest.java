package rootcast.availability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static rootcast.availability.Periods.period;

import java.time.LocalDate;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Orders against small cells; expected figures by hand. */
class MatchRulesTest {

    private static final Cell LAVENDER = new Cell("lavender", "t84", "north");
    private static final Cell SALVIA = new Cell("salvia", "t84", "north");

    private final Map<Cell, CellSupply> cells = new HashMap<>();

    @Test
    void anOrderThatFitsIsAcceptedAsAWhole() {
        cells.put(LAVENDER, new Periods().lot("A", 2, 4, 10).supply());
        cells.put(SALVIA, new Periods().lot("B", 3, 9, 5).supply());
        var lines = List.of(wanted(1, LAVENDER, 2, 10), wanted(2, SALVIA, 3, 5));

        assertThat(place(lines)).isEqualTo(new Placing.Accepted(lines, 0.9));
    }

    @Test
    void oneLineTooManyRefusesTheOrderAndNamesOnlyThatLine() {
        cells.put(LAVENDER, new Periods().lot("A", 2, 4, 10).supply());
        cells.put(SALVIA, new Periods().lot("B", 3, 9, 5).supply());
        var tooMany = wanted(2, SALVIA, 3, 6);

        assertThat(place(List.of(wanted(1, LAVENDER, 2, 10), tooMany)))
                .isEqualTo(new Placing.Refused(List.of(new NotEnoughOpen(tooMany, 5, null, null))));
    }

    @Test
    void linesOfOneOrderCompeteForTheSameTrays() {
        cells.put(
                LAVENDER, new Periods().lot("A", 2, 4, 10).lot("B", 20, 22, 10).supply());
        var first = wanted(1, LAVENDER, 2, 7);
        var second = wanted(2, LAVENDER, 4, 4);

        assertThat(place(List.of(first, second)))
                .isEqualTo(new Placing.Refused(
                        List.of(new NotEnoughOpen(second, 3, null, new NotEnoughOpen.Nearest(period(20), 10)))));
    }

    @Test
    void aRefusedLineTakesNothingFromTheLinesAfterIt() {
        cells.put(LAVENDER, new Periods().lot("A", 2, 4, 10).supply());
        var tooMany = wanted(1, LAVENDER, 2, 11);

        assertThat(place(List.of(tooMany, wanted(2, LAVENDER, 3, 10))))
                .isEqualTo(new Placing.Refused(List.of(new NotEnoughOpen(tooMany, 10, null, null))));
    }

    @Test
    void aCellThatNobodyGrowsHasNothingOpen() {
        var line = wanted(1, LAVENDER, 2, 1);

        assertThat(place(List.of(line)))
                .isEqualTo(new Placing.Refused(List.of(new NotEnoughOpen(line, 0, null, null))));
    }

    @Test
    void aDateThatIsPastHasNothingOpenWhateverIsReady() {
        cells.put(LAVENDER, new Periods().lot("A", 1, 4, 10).supply());
        var yesterday = wanted(1, LAVENDER, 0, 1);

        assertThat(place(List.of(yesterday)))
                .isEqualTo(new Placing.Refused(
                        List.of(new NotEnoughOpen(yesterday, 0, null, new NotEnoughOpen.Nearest(period(1), 10)))));
    }

    @Test
    void theConfidenceDecidesWhatCounts() {
        cells.put(
                LAVENDER,
                new Periods()
                        .lot("A", new double[] {0.6}, Periods.certain(8), 5)
                        .supply());
        var lines = List.of(wanted(1, LAVENDER, 2, 8));

        assertThat(MatchRules.place(lines, 0.5, this::supply)).isInstanceOf(Placing.Accepted.class);
        assertThat(MatchRules.place(lines, 0.7, this::supply)).isInstanceOf(Placing.Refused.class);
    }

    @Nested
    class TheNearestDateWithEnough {

        @Test
        void isTheClosestByDays() {
            assertThat(nearest(new Periods().lot("A", 5, 6, 10).lot("B", 13, 20, 10), 10))
                    .isEqualTo(new NotEnoughOpen.Nearest(period(13), 10));
            assertThat(nearest(new Periods().lot("A", 5, 8, 10).lot("B", 13, 20, 12), 10))
                    .isEqualTo(new NotEnoughOpen.Nearest(period(8), 10));
        }

        @Test
        void isTheLaterOfTwoEquallyClose() {
            assertThat(nearest(new Periods().lot("A", 5, 7, 10).lot("B", 13, 20, 12), 10))
                    .isEqualTo(new NotEnoughOpen.Nearest(period(13), 12));
        }

        @Test
        void isNamedOnEitherSideSoThatTheCustomerMayChoose() {
            cells.put(
                    LAVENDER,
                    new Periods().lot("A", 5, 8, 10).lot("B", 13, 20, 12).supply());
            var refused = (Placing.Refused) place(List.of(wanted(1, LAVENDER, 10, 10)));

            assertThat(refused.lines().get(0).earlier()).isEqualTo(new NotEnoughOpen.Nearest(period(8), 10));
            assertThat(refused.lines().get(0).later()).isEqualTo(new NotEnoughOpen.Nearest(period(13), 12));
        }

        @Test
        void countsWhatIsPromisedThere() {
            assertThat(nearest(
                            new Periods()
                                    .lot("A", 5, 8, 10)
                                    .lot("B", 20, 30, 14)
                                    .order(6, 3),
                            10))
                    .isEqualTo(new NotEnoughOpen.Nearest(period(20), 14));
        }

        @Test
        void isNeverBeforeToday() {
            var lots = new Periods().lot("A", 1, 9, 10).supply().lots();
            cells.put(LAVENDER, new CellSupply(lots, List.of(), period(10)));

            assertThat(place(List.of(wanted(1, LAVENDER, 10, 1))))
                    .isEqualTo(
                            new Placing.Refused(List.of(new NotEnoughOpen(wanted(1, LAVENDER, 10, 1), 0, null, null))));
        }

        @Test
        void isLookedForUpTo26WeeksAway() {
            assertThat(nearest(new Periods().lot("A", 10 + 182, 400, 10), 10))
                    .isEqualTo(new NotEnoughOpen.Nearest(period(10 + 182), 10));
            assertThat(nearest(new Periods().lot("A", 10 + 183, 400, 10), 10)).isNull();
        }

        private NotEnoughOpen.Nearest nearest(Periods cell, int trays) {
            cells.put(LAVENDER, cell.supply());
            var refused = (Placing.Refused) place(List.of(wanted(1, LAVENDER, 10, trays)));
            return refused.lines().get(0).nearest();
        }
    }

    /** Orders one by one on random cells: accepted exactly when everything booked still flows (max-flow oracle). */
    @Test
    void acceptsExactlyWhatTheOracleCanServe() {
        var random = new RandomCells(2026);
        int accepted = 0;
        int refused = 0;
        for (int run = 0; run < 1_000; run++) {
            CellSupply supply = new CellSupply(random.next(true).supply().lots(), List.of(), Periods.TODAY);
            for (int order = 0; order < 6; order++) {
                cells.put(LAVENDER, supply);
                LocalDate date = period(random.period());
                int trays = 1 + order % 3;
                double confidence = random.confidence();
                Placing placing =
                        MatchRules.place(List.of(new WantedLine(1, LAVENDER, date, trays)), confidence, this::supply);
                CellSupply more = supply.plus(new Promise("o" + order, 1, date, trays, confidence, order));
                boolean fits = more.promises().stream()
                        .allMatch(each -> new MaxFlow(more, each.confidence()).everythingFits());

                assertThat(placing instanceof Placing.Accepted)
                        .as("seed 2026 run %d order %d: %s", run, order, more)
                        .isEqualTo(fits);
                supply = fits ? more : supply;
                accepted += fits ? 1 : 0;
                refused += fits ? 0 : 1;
            }
        }
        assertThat(accepted).isGreaterThan(1_000);
        assertThat(refused).isGreaterThan(1_000);
    }

    @Test
    void linesForNoTraysAreRefusedAtOnce() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> wanted(3, LAVENDER, 2, 0))
                .withMessageContaining("line 3")
                .withMessageContaining("0 trays");
    }

    private Placing place(List<WantedLine> lines) {
        return MatchRules.place(lines, 0.9, this::supply);
    }

    private CellSupply supply(Cell cell) {
        return cells.getOrDefault(cell, new CellSupply(List.of(), List.of(), Periods.TODAY));
    }

    private static WantedLine wanted(int line, Cell cell, int period, int trays) {
        return new WantedLine(line, cell, period(period), trays);
    }
}
