package rootcast.board;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.board.BoardModelTest.HEAD;
import static rootcast.board.BoardModelTest.TODAY;
import static rootcast.board.BoardModelTest.lot;
import static rootcast.board.BoardModelTest.promise;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import rootcast.availability.CellSupply;
import rootcast.availability.Limit;
import rootcast.availability.Promise;
import rootcast.availability.Share;
import rootcast.availability.TableLot;
import rootcast.board.CellExplanation.LotFigure;
import rootcast.board.CellExplanation.PromiseFigure;
import rootcast.site.ShipWeek;

/** One row by hand: two lots, three promises, of which the last made is short. */
class CellExplanationTest {

    private final CellSupply supply = new CellSupply(
            List.of(lot("late", "2026-12-01", "2026-12-20", 8), lot("early", "2026-11-20", "2026-12-06", 5)),
            List.of(promise("2026-12-03", 4, 1), promise("2026-12-10", 6, 2), promise("2026-12-11", 4, 3)),
            TODAY);

    @Test
    void namesTheDatesThatLimitAndThePromisesCountedOnThem() {
        var explained = explain("2026-W50");

        assertThat(explained.limitedBy())
                .isEqualTo(new Limit(0.9, List.of(date("2026-12-07"), date("2026-12-10"), date("2026-12-11")), 8, 10));
        assertThat(explained.promises()).extracting(PromiseFigure::inLimit).containsExactly(false, true, true);
        assertThat(explained.promises()).extracting(PromiseFigure::inWeek).containsExactly(false, true, true);
    }

    @Test
    void showsEveryLotWithWhatItOffersAndWhomItServes() {
        assertThat(explain("2026-W50").lots())
                .containsExactly(
                        new LotFigure("early", 1, TODAY, date("2026-12-06"), 0, 0, 4),
                        new LotFigure("late", 1, date("2026-12-01"), date("2026-12-20"), 8, 8, 8));
    }

    @Test
    void showsWhatStandsBehindEachPromise() {
        var promises = explain("2026-W50").promises();

        assertThat(promises)
                .extracting(each -> each.promise().shares())
                .containsExactly(
                        List.of(new Share("early", 4)), List.of(new Share("late", 6)), List.of(new Share("late", 2)));
        assertThat(promises).extracting(each -> each.promise().kept()).containsExactly(true, true, false);
    }

    @Test
    void repeatsTheFiguresOfTheBoard() {
        var onBoard = BoardModelTest.row(supply, 0.9, "2026-W48", "2026-W49", "2026-W50", "2026-W51");

        assertThat(explain("2026-W50").cell()).isEqualTo(onBoard.get(2));
        assertThat(explain("2026-W48").cell()).isEqualTo(onBoard.get(0));
    }

    @Test
    void aPromiseBelowTheLimitingConfidenceDoesNotCountInTheLimit() {
        var sure = new Promise("o1", 1, date("2026-12-03"), 3, 0.9, 1);
        var evenBet = new Promise("o2", 1, date("2026-12-03"), 1, 0.5, 2);
        double[] tail = {1, 1, 1, 1, 1, 0.6, 0.6, 0.6, 0.6};
        var lot = TableLot.product("b1", TODAY, new double[] {1}, tail, date("2026-12-20"));
        var explained = CellExplanation.of(
                HEAD,
                new CellSupply(List.of(lot), List.of(sure, evenBet), TODAY),
                ShipWeek.parse("2026-W49"),
                0.9,
                DayOfWeek.THURSDAY);

        assertThat(explained.limitedBy()).isEqualTo(new Limit(0.9, List.of(date("2026-12-03")), 4, 3));
        assertThat(explained.promises()).extracting(PromiseFigure::inLimit).containsExactly(true, false);
    }

    @Test
    void ofAPastWeekHasPromisesAndNothingElse() {
        var explained = explain("2026-W47");

        assertThat(explained.limitedBy()).isNull();
        assertThat(explained.lots()).isEmpty();
        assertThat(explained.promises()).hasSize(3);
    }

    private CellExplanation explain(String week) {
        return CellExplanation.of(HEAD, supply, ShipWeek.parse(week), 0.9, DayOfWeek.MONDAY);
    }

    private static LocalDate date(String text) {
        return LocalDate.parse(text);
    }
}
