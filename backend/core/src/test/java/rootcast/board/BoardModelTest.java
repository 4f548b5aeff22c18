package rootcast.board;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.availability.Promise;
import rootcast.availability.SupplyLot;
import rootcast.availability.TableLot;
import rootcast.site.ShipWeek;

/** Rows worked out by hand. Today is Wednesday 2026-11-25 in week 48; the site ships on Mondays. */
class BoardModelTest {

    static final LocalDate TODAY = LocalDate.parse("2026-11-25");
    static final RowHead HEAD =
            new RowHead(new Cell("lavender", "t84", "north"), "Lavandula angustifolia 'Test'", "lavandula", "Lavender");

    @ParameterizedTest(name = "{0} with ship day {1} stands for {2}")
    @CsvSource({
        "2026-W47, MONDAY, 2026-11-16",
        "2026-W48, MONDAY, 2026-11-25",
        "2026-W48, WEDNESDAY, 2026-11-25",
        "2026-W48, FRIDAY, 2026-11-27",
        "2026-W49, MONDAY, 2026-11-30",
        "2026-W53, SUNDAY, 2027-01-03",
        "2027-W01, MONDAY, 2027-01-04",
    })
    void aCellStandsForTheShipDayButTheRunningWeekForNoDayBeforeToday(
            String week, DayOfWeek shipDay, LocalDate expected) {
        assertThat(BoardModel.dayOf(ShipWeek.parse(week), shipDay, TODAY)).isEqualTo(expected);
    }

    @Test
    void figuresOfThreeWeeks() {
        // 10 trays from Monday of week 49 to Sunday of week 50; 4 promised on the Thursday between.
        var supply = new CellSupply(
                List.of(lot("b1", "2026-11-30", "2026-12-13", 10)), List.of(promise("2026-12-03", 4, 1)), TODAY);

        assertThat(row(supply, 0.9, "2026-W48", "2026-W49", "2026-W50", "2026-W51"))
                .containsExactly(
                        cell("2026-W48", "2026-11-25", 0, 0, 0, 0, 0),
                        cell("2026-W49", "2026-11-30", 10, 4, 6, 6, 0),
                        cell("2026-W50", "2026-12-07", 10, 0, 6, 6, 0),
                        cell("2026-W51", "2026-12-14", 0, 0, 0, 0, 0));
    }

    @Test
    void likelyCountsAtEvenOdds() {
        double[] tail = new double[15];
        Arrays.fill(tail, 0, 9, 1.0);
        Arrays.fill(tail, 9, 13, 0.7);
        Arrays.fill(tail, 13, 15, 0.4);
        var supply = new CellSupply(
                List.of(TableLot.product("b1", TODAY, new double[] {1}, tail, LocalDate.parse("2026-12-31"))),
                List.of(promise("2026-12-03", 3, 1)),
                TODAY);

        assertThat(row(supply, 0.9, "2026-W49")).containsExactly(cell("2026-W49", "2026-11-30", 8, 3, 5, 9, 0));
        assertThat(row(supply, 0.3, "2026-W49")).containsExactly(cell("2026-W49", "2026-11-30", 14, 3, 11, 11, 0));
    }

    /** One tray counts at 90 %, four at even odds: the three promised at even odds need not be among the one. */
    @Test
    void traysPromisedAtLowerOddsThanAskedForAreTold() {
        double[] tail = {1, 1, 0.6, 0.6, 0.6};
        var supply = new CellSupply(
                List.of(TableLot.product("b1", TODAY, new double[] {1}, tail, LocalDate.parse("2026-12-31"))),
                List.of(
                        new Promise("sure", 1, LocalDate.parse("2026-12-03"), 1, 0.9, 1),
                        new Promise("even", 1, LocalDate.parse("2026-12-03"), 3, 0.5, 2)),
                TODAY);

        BoardCell sure = row(supply, 0.9, "2026-W49").get(0);
        assertThat(sure.promised()).isEqualTo(4);
        assertThat(sure.lessSure()).isEqualTo(3);
        assertThat(row(supply, 0.5, "2026-W49").get(0).lessSure()).isZero();
        assertThat(row(supply, 0.95, "2026-W49").get(0).lessSure()).isEqualTo(4);
    }

    @Test
    void anOverduePromiseCountsInItsOwnWeekAndTakesItsTraysNow() {
        var supply = new CellSupply(
                List.of(lot("b1", "2026-11-01", "2026-12-13", 10)), List.of(promise("2026-11-17", 4, 1)), TODAY);

        assertThat(row(supply, 0.9, "2026-W47", "2026-W48", "2026-W49"))
                .containsExactly(
                        cell("2026-W47", "2026-11-16", 0, 4, 0, 0, 0),
                        cell("2026-W48", "2026-11-25", 10, 0, 6, 6, 0),
                        cell("2026-W49", "2026-11-30", 10, 0, 6, 6, 0));
    }

    @Test
    void promisesOfTheRunningWeekBeforeTodayStayInItsPromisedFigure() {
        var supply = new CellSupply(
                List.of(lot("b1", "2026-11-01", "2026-12-13", 10)),
                List.of(promise("2026-11-23", 2, 1), promise("2026-11-29", 3, 2)),
                TODAY);

        assertThat(row(supply, 0.9, "2026-W48")).containsExactly(cell("2026-W48", "2026-11-25", 10, 5, 5, 5, 0));
    }

    @Test
    void aWeekHoldsItsMondayAndItsSundayAndNotTheNextMonday() {
        var supply = new CellSupply(
                List.of(lot("b1", "2026-11-01", "2026-12-31", 100)),
                List.of(promise("2026-11-30", 1, 1), promise("2026-12-06", 2, 2), promise("2026-12-07", 4, 3)),
                TODAY);

        assertThat(row(supply, 0.9, "2026-W48", "2026-W49", "2026-W50"))
                .extracting(BoardCell::promised)
                .containsExactly(0, 3, 4);
    }

    @Test
    void traysAtRiskStandInTheWeekTheyWerePromisedFor() {
        var supply = new CellSupply(
                List.of(lot("b1", "2026-11-01", "2026-12-13", 10)),
                List.of(promise("2026-12-08", 7, 1), promise("2026-11-17", 2, 2), promise("2026-12-01", 6, 3)),
                TODAY);

        assertThat(row(supply, 0.9, "2026-W47", "2026-W48", "2026-W49", "2026-W50"))
                .containsExactly(
                        cell("2026-W47", "2026-11-16", 0, 2, 0, 0, 0),
                        cell("2026-W48", "2026-11-25", 10, 0, 0, 0, 0),
                        cell("2026-W49", "2026-11-30", 10, 6, 0, 0, 5),
                        cell("2026-W50", "2026-12-07", 10, 7, 0, 0, 0));
    }

    @Test
    void weeksAcrossAYearWith53AreNeighbours() {
        var supply = new CellSupply(List.of(lot("b1", "2026-12-28", "2027-01-10", 3)), List.of(), TODAY);

        assertThat(row(supply, 0.9, "2026-W52", "2026-W53", "2027-W01", "2027-W02"))
                .extracting(BoardCell::open)
                .containsExactly(0, 3, 3, 0);
    }

    @Test
    void aConfidenceOutsideItsRangeIsRefused() {
        var empty = new CellSupply(List.of(), List.of(), TODAY);

        assertThatIllegalArgumentException().isThrownBy(() -> row(empty, 0, "2026-W49"));
        assertThatIllegalArgumentException().isThrownBy(() -> row(empty, 1.5, "2026-W49"));
    }

    @Test
    void aSupplyOfAnotherDayIsRefused() {
        var model = new BoardModel(List.of(ShipWeek.parse("2026-W49")), 0.9, DayOfWeek.MONDAY, TODAY);
        var yesterday = new CellSupply(List.of(), List.of(), TODAY.minusDays(1));

        assertThatIllegalArgumentException()
                .isThrownBy(() -> model.row(HEAD, yesterday))
                .withMessageContaining("2026-11-24")
                .withMessageContaining("2026-11-25");
    }

    @Nested
    class WhatChanged {

        private final BoardRow lavender = rowOf("lavender", 5);
        private final BoardRow salvia = rowOf("salvia", 7);
        private final BoardRow thyme = rowOf("thyme", 1);

        @Test
        void holdsNewRowsChangedRowsAndRemovedOnes() {
            var change = BoardChange.between(board(lavender, salvia), board(rowOf("lavender", 4), thyme));

            assertThat(change.rows()).containsExactly(rowOf("lavender", 4), thyme);
            assertThat(change.removed()).containsExactly(salvia.head().cell());
            assertThat(change.isEmpty()).isFalse();
        }

        @Test
        void isEmptyBetweenEqualPicturesWhateverTheOrderOfTheirRows() {
            assertThat(BoardChange.between(board(lavender, salvia), board(rowOf("salvia", 7), lavender))
                            .isEmpty())
                    .isTrue();
        }

        @Test
        void appliedToTheEarlierPictureGivesTheLaterOne() {
            var before = board(lavender, salvia);
            var after = board(thyme, rowOf("salvia", 6));
            var change = BoardChange.between(before, after);

            var rows = new HashMap<Cell, BoardRow>();
            before.rows().forEach(row -> rows.put(row.head().cell(), row));
            change.rows().forEach(row -> rows.put(row.head().cell(), row));
            change.removed().forEach(rows::remove);

            assertThat(rows.values()).containsExactlyInAnyOrderElementsOf(after.rows());
        }

        @Test
        void isNotDefinedBetweenDifferentWeeksOrConfidences() {
            var other = new Board(0.8, List.of(ShipWeek.parse("2026-W49")), List.of());

            assertThatIllegalArgumentException()
                    .isThrownBy(() -> BoardChange.between(board(), other))
                    .withMessageContaining("0.9")
                    .withMessageContaining("0.8");
        }

        private Board board(BoardRow... rows) {
            return new Board(0.9, List.of(ShipWeek.parse("2026-W49")), List.of(rows));
        }

        private BoardRow rowOf(String variety, int open) {
            return new BoardRow(
                    new RowHead(new Cell(variety, "t84", "north"), variety, "c", "Crop"),
                    List.of(cell("2026-W49", "2026-11-30", open, 0, open, open, 0)));
        }
    }

    static List<BoardCell> row(CellSupply supply, double confidence, String... weeks) {
        List<ShipWeek> columns = Arrays.stream(weeks).map(ShipWeek::parse).toList();
        return new BoardModel(columns, confidence, DayOfWeek.MONDAY, supply.today())
                .row(HEAD, supply)
                .cells();
    }

    static SupplyLot lot(String batch, String from, String untilInclusive, int trays) {
        double[] certain = new double[trays + 1];
        Arrays.fill(certain, 1);
        return TableLot.product(
                batch, LocalDate.parse(from), new double[] {1}, certain, LocalDate.parse(untilInclusive));
    }

    static Promise promise(String shipOn, int trays, int position) {
        return new Promise("o" + position, 1, LocalDate.parse(shipOn), trays, 0.9, position);
    }

    private static BoardCell cell(String week, String date, int ready, int promised, int open, int likely, int atRisk) {
        return new BoardCell(ShipWeek.parse(week), LocalDate.parse(date), ready, promised, open, likely, atRisk, 0);
    }
}
