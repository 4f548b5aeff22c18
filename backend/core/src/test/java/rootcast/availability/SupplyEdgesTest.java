package rootcast.availability;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.availability.Periods.period;

import java.util.List;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

/** Ends of ranges of what is offered and promised, worked out by hand. */
class SupplyEdgesTest {

    @Test
    void theFirstUsableDateMayBeTheLast() {
        SupplyLot last = lot(5, 5, new double[] {1, 1});

        assertThat(last.usableFrom(period(1), 0.9)).isEqualTo(period(5));
        assertThat(last.usableFrom(period(5), 0.9)).isEqualTo(period(5));
        assertThat(last.usableFrom(period(6), 0.9)).isNull();
        assertThat(lot(6, 5, new double[] {1, 1}).usableFrom(period(1), 0.9))
                .as("ready only after its last usable date")
                .isNull();
        assertThat(lot(4, 9, new double[] {1, 1}).usableFrom(period(1), 1)).isEqualTo(period(4));
    }

    @Test
    void aLotWithoutATrayOffersNone() {
        assertThat(lot(1, 5, new double[] {1}).traysAt(period(2), 0.01)).isZero();
        assertThat(lot(1, 5, new double[] {1, 0}).traysAt(period(2), 0.01)).isZero();
        assertThat(lot(1, 5, new double[] {1, 0}).usableUntilInclusive(0.01)).isNull();
        assertThat(lot(1, 5, new double[] {1}).batch()).isEqualTo("A");
    }

    /** So many confidences as a slider can be dragged over: what is not kept is worked out again, to the same. */
    @Test
    void anyNumberOfConfidencesMayBeAsked() {
        SupplyLot lot = lot(1, 5, new double[] {1, 0.95, 0.55});
        for (int percent = 1; percent <= 100; percent++) {
            assertThat(lot.traysAt(period(2), percent / 100.0)).isEqualTo(percent > 95 ? 0 : percent > 55 ? 1 : 2);
        }
    }

    private static SupplyLot lot(int from, int until, double[] tail) {
        return TableLot.product("A", period(from), new double[] {1}, tail, period(until));
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

    @Test
    void whatIsReadyOnTheLastDateAskedIsToldToo() {
        OpenAt figures = OpenTrays.of(new Periods().lot("A", 2, 9, 5).supply(), Periods.periods(1, 3))
                .at(0.9);

        assertThat(Periods.periods(1, 3).stream().map(figures::ready)).containsExactly(0, 5, 5);
    }

    /** 10 count at nine in ten; at even odds 18, of which 8 are promised: 10 are open at either. */
    @Test
    void ofEquallyTightConfidencesTheOneAskedForIsNamed() {
        var supply = new Periods()
                .lot("A", 1, 5, 10)
                .lot("B", new double[] {0.6}, Periods.certain(8), 5)
                .order(2, 8, 0.5)
                .supply();

        assertThat(OpenTrays.of(supply, Periods.periods(2, 2)).at(0.9).limit(period(2)))
                .isEqualTo(new Limit(0.9, List.of(period(2)), 10, 0));
    }

    @Test
    void promisesAtRiskAreNamedTheMostSeniorFirst() {
        var supply = new Periods()
                .lot("A", 1, 2, 10)
                .order(4, 3, 0.5)
                .order(4, 1, 0.9)
                .order(4, 2, 0.9)
                .supply();

        assertThat(Shortfall.of(supply)).extracting(Shortfall::trays).containsExactly(1, 2, 3);
    }

    /** Tray 2 is as likely on 1 as on 3 and not there on 2. */
    @Test
    void ofABrokenWindowWithEquallyLikelyRunsTheFirstCounts() {
        var lot = TableLot.of("A", period(1), new double[][] {{1, 0.95, 0.92}, {1, 0.95, 0.5}, {1, 0.95, 0.92}});

        assertThat(Periods.periods(1, 4).stream().map(day -> lot.traysAt(day, 0.9)))
                .containsExactly(2, 1, 1, 0);
    }
}
