package rootcast.app.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.availability.SupplyLot;
import rootcast.availability.TrayOdds;
import rootcast.availability.WantedLine;

/** On the telephone. */
class AgreedOrderTest {

    private static final Cell CELL = new Cell("MINT", "T72", "HILL");
    private static final LocalDate MONDAY = LocalDate.parse("2026-03-02");

    private static AgreedOrder order(int trays, CellSupply supply) {
        return AgreedOrder.of(List.of(new WantedLine(1, CELL, MONDAY, trays)), 0.95, Map.of(CELL, supply));
    }

    private static List<WantedLine> agreed(int trays, CellSupply supply) {
        return order(trays, supply).lines();
    }

    private static CellSupply oneWeek(LocalDate from, int trays) {
        return oneWeek(from, trays, 1);
    }

    /** So many trays with a probability, in one week from a day on. */
    private static CellSupply oneWeek(LocalDate from, int trays, double likely) {
        TrayOdds odds = new TrayOdds() {
            @Override
            public Days daysWith(double probability) {
                return new Days(from, from.plusDays(6));
            }

            @Override
            public int mostWith(double probability) {
                return trays;
            }

            @Override
            public IntToDoubleFunction on(LocalDate day) {
                return number -> number <= trays ? likely : 0;
            }
        };
        return new CellSupply(
                List.of(new SupplyLot("A", day -> 1, odds, crop -> (world, days) -> new int[days.size()])),
                List.of(),
                MONDAY);
    }

    @Test
    void whatIsOpenIsTakenAsAsked() {
        assertThat(agreed(13, oneWeek(MONDAY, 13))).containsExactly(new WantedLine(1, CELL, MONDAY, 13));
    }

    @Test
    void anotherShipDayWillDo() {
        assertThat(agreed(13, oneWeek(MONDAY.plusWeeks(2), 13)))
                .containsExactly(new WantedLine(1, CELL, MONDAY.plusWeeks(2), 13));
    }

    /** 13 are not to be had on any day, nor 6; 3 are. */
    @Test
    void fewerTraysWillDo() {
        assertThat(agreed(13, oneWeek(MONDAY.plusWeeks(1), 5)))
                .containsExactly(new WantedLine(1, CELL, MONDAY.plusWeeks(1), 3));
    }

    /** As much as was asked for, if only eight in ten are enough. */
    @Test
    void whereNothingIsSoSureLessSureWillDo() {
        AgreedOrder order = order(13, oneWeek(MONDAY, 13, 0.85));

        assertThat(order.confidence()).isEqualTo(0.8);
        assertThat(order.lines()).containsExactly(new WantedLine(1, CELL, MONDAY, 13));
    }

    /** Nothing is open on any day, so the talk ends with one tray on the last day tried: six weeks before. */
    @Test
    void theCustomerGivesUpInTheEnd() {
        assertThat(agreed(13, new CellSupply(List.of(), List.of(), MONDAY)))
                .containsExactly(new WantedLine(1, CELL, MONDAY.minusWeeks(6), 1));
    }
}
