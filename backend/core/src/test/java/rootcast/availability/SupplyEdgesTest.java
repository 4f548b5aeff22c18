package rootcast.availability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static rootcast.availability.Periods.period;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Ends of ranges of what is offered and promised, worked out by hand. */
class SupplyEdgesTest {

    private static SupplyLot lot(String batch, ReadyOdds odds, double[] tail, int until) {
        return new SupplyLot(batch, odds, tail, period(until));
    }

    @Test
    void aTableOfOddsIsNoneBeforeItsFirstDayAndStaysAsItEnds() {
        ReadyOdds odds = ReadyOdds.daily(period(3), new double[] {0, 0.5, 0.5, 1});

        assertThat(Stream.of(1, 2, 3, 4, 5, 6, 7, 90).map(period -> odds.readyBy(period(period))))
                .containsExactly(0.0, 0.0, 0.0, 0.5, 0.5, 1.0, 1.0, 1.0);
        assertThatIllegalArgumentException()
                .isThrownBy(() -> ReadyOdds.daily(period(1), new double[] {1.01}))
                .withMessageContaining("1.01");
        assertThatIllegalArgumentException().isThrownBy(() -> ReadyOdds.daily(period(1), new double[] {-0.01}));
        assertThatIllegalArgumentException().isThrownBy(() -> ReadyOdds.daily(period(1), new double[] {Double.NaN}));
    }

    @Test
    void certaintyBeginsOnItsDay() {
        ReadyOdds odds = ReadyOdds.certainFrom(period(3));

        assertThat(odds.readyBy(period(2))).isZero();
        assertThat(odds.readyBy(period(3))).isEqualTo(1);
    }

    @Test
    void theFirstUsableDateMayBeTheLast() {
        SupplyLot last = lot("A", ReadyOdds.certainFrom(period(5)), new double[] {1, 1}, 5);

        assertThat(last.usableFrom(period(1), 0.9)).isEqualTo(period(5));
        assertThat(last.usableFrom(period(5), 0.9)).isEqualTo(period(5));
        assertThat(last.usableFrom(period(6), 0.9)).isNull();
        assertThat(lot("A", ReadyOdds.certainFrom(period(6)), new double[] {1, 1}, 5)
                        .usableFrom(period(1), 0.9))
                .as("ready only after its last usable date")
                .isNull();
        assertThat(lot("A", ReadyOdds.certainFrom(period(4)), new double[] {1, 1}, 9)
                        .usableFrom(period(1), 1))
                .isEqualTo(period(4));
    }

    @Test
    void oddsOfTraysEndWithTheTail() {
        SupplyLot lot = lot("A", ReadyOdds.certainFrom(period(1)), new double[] {1, 0.9, 0.4}, 5);

        assertThat(lot.atLeast(0)).isEqualTo(1);
        assertThat(lot.atLeast(2)).isEqualTo(0.4);
        assertThat(lot.atLeast(3)).isZero();
        assertThat(lot.batch()).isEqualTo("A");
        assertThat(lot.usableUntilInclusive()).isEqualTo(period(5));
        assertThat(lot("Z", ReadyOdds.certainFrom(period(1)), new double[] {1, 0}, 5)
                        .traysAt(period(2), 0.01))
                .isZero();
    }

    @Test
    void oddsAtTheirEndsAreTaken() {
        assertThat(lot("A", date -> 0, new double[] {1}, 5).readyBy(period(1))).isZero();
        assertThat(lot("A", date -> 1, new double[] {1}, 5).readyBy(period(1))).isEqualTo(1);
        assertThatIllegalStateException()
                .isThrownBy(() -> lot("A", date -> -1e-9, new double[] {1}, 5).readyBy(period(1)))
                .withMessageContaining("A");
    }

    /** What fell by no more than rounding is taken as no fall: 0.8999999999999999 after 0.9. */
    @Test
    void oddsThatRoundingLetsFallStayWhereTheyWere() {
        ReadyOdds rounding = date -> date.isAfter(period(2)) ? 0.9 - 1e-13 : 0.9;
        var supply = new CellSupply(List.of(lot("A", rounding, new double[] {1, 1}, 9)), List.of(), period(1));
        OpenAt figures = OpenTrays.of(supply, List.of(period(2), period(3))).at(0.9);

        assertThat(figures.open(period(2))).isEqualTo(1);
        assertThat(figures.open(period(3))).isEqualTo(1);
    }

    /** B is an even bet and ends first: a promise at nine in ten cannot rest on it, one at even odds draws on it. */
    @Test
    void aPromiseIsServedFromWhatCountsAtItsOwnConfidence() {
        var cell = new Periods()
                .lot("A", 1, 5, 10)
                .lot("B", new double[] {0.6}, Periods.certain(8), 3)
                .order(2, 5, 0.9)
                .order(2, 5, 0.5);

        assertThat(Allotment.of(cell.supply()).promises())
                .extracting(KeptPromise::shares)
                .containsExactly(List.of(new Share("A", 5)), List.of(new Share("B", 5)));
    }

    @Test
    void confidenceOneIsAsked() {
        assertThat(new Periods().lot("A", 1, 3, 10).open(2, 2, 1)).containsExactly(10);
        assertThat(new Promise("o", 1, period(1), 0, 1, 1).confidence()).isEqualTo(1);
    }

    @Test
    void aPromiseIsDueOnItsDateOrToday() {
        Promise promise = new Promise("o", 1, period(3), 2, 0.9, 1);

        assertThat(promise.dueOn(period(2))).isEqualTo(period(3));
        assertThat(promise.dueOn(period(3))).isEqualTo(period(3));
        assertThat(promise.dueOn(period(4))).isEqualTo(period(4));
    }

    @Test
    void cellsAreInOrderOfVarietyThenFormatThenSite() {
        Cell[] inOrder = {
            new Cell("a", "T1", "n"), new Cell("a", "T1", "s"), new Cell("a", "T2", "m"), new Cell("b", "T0", "a")
        };

        assertThat(Stream.of(inOrder[2], inOrder[0], inOrder[3], inOrder[1]).sorted())
                .containsExactly(inOrder);
    }

    @Test
    void aPromiseIsKeptIfNothingOfItIsMissing() {
        Promise promise = new Promise("o", 1, period(3), 2, 0.9, 1);

        assertThat(new KeptPromise(promise, 2, List.of()).kept()).isTrue();
        assertThat(new KeptPromise(promise, 1, List.of()).kept()).isFalse();
        assertThat(new KeptPromise(promise, 1, List.of()).shortfallTrays()).isEqualTo(1);
    }
}
