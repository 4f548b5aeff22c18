package rootcast.availability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static rootcast.availability.Periods.period;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/** Small cells that can be worked out on paper. */
class OpenTraysTest {

    @Test
    void withoutLotsNothingIsOpen() {
        assertThat(new Periods().open(1, 3)).containsExactly(0, 0, 0);
    }

    @Test
    void withoutPromisesOpenIsReady() {
        var cell = new Periods().lot("A", 2, 3, 5).lot("B", 3, 4, 7);
        var dates = Periods.periods(1, 5);
        OpenAt figures = OpenTrays.of(cell.supply(), dates).at(0.9);

        assertThat(dates.stream().map(figures::ready)).containsExactly(0, 5, 12, 7, 0);
        assertThat(dates.stream().map(figures::open)).containsExactly(0, 5, 12, 7, 0);
    }

    @Test
    void aPromiseLowersEveryDateThatSharesItsTrays() {
        var cell = new Periods().lot("A", 2, 4, 10).order(3, 4);

        assertThat(cell.open(1, 5)).containsExactly(0, 6, 6, 6, 0);
    }

    /**
     * One lot of 2, 5, 9, 6, 3 trays. With 5 promised on 3 a date loses what {date, 3} lacks: nine trays in all less five. With 3
     * more on 5 the three that last so long are gone: 1 shares them ({1, 5}: 3 − 3), and of nine eight are promised.
     */
    @Test
    void traysOfOneLotBeginAndEndOneAfterAnother() {
        var cell = new Periods().offering("A", 2, 5, 9, 6, 3);
        assertThat(cell.open(1, 6)).containsExactly(2, 5, 9, 6, 3, 0);

        cell.order(3, 5);
        assertThat(cell.open(1, 6)).containsExactly(2, 4, 4, 4, 3, 0);

        cell.order(5, 3);
        assertThat(cell.open(1, 6)).containsExactly(0, 1, 1, 1, 0, 0);
    }

    @Test
    void aPromiseThatOtherTraysCanServeCostsAnotherDateNothing() {
        var cell = new Periods().lot("A", 2, 3, 10).lot("B", 3, 5, 4).order(3, 4);

        assertThat(cell.open(2, 5)).containsExactly(10, 10, 4, 4);
    }

    /** Both 1 and 3 draw on A; 2 has trays of its own. Any run that holds 1 and 3 holds 2 and its free trays too. */
    @Test
    void theDatesThatLimitNeedNotBeNeighbours() {
        var cell = new Periods().lot("A", 1, 3, 10).lot("B", 2, 2, 50).order(1, 6);

        var limit = OpenTrays.of(cell.supply(), Periods.periods(1, 3)).at(0.9).limit(period(3));

        assertThat(limit).isEqualTo(new Limit(0.9, List.of(period(1), period(3)), 10, 6));
        assertThat(cell.open(1, 3)).containsExactly(4, 54, 4);
    }

    /** Every tray of A is usable on 2, 4 and 6. {4} has slack 10 − 5, {4, 6} 15 − 10 and {2, 4, 6} 20 − 15. */
    @Test
    void ofEquallyTightSetsTheSmallestIsNamed() {
        var cell = new Periods().lot("A", 2, 6, 10).lot("B", 6, 6, 5).lot("C", 2, 2, 5);
        cell.order(2, 5).order(4, 5).order(6, 5);

        assertThat(OpenTrays.of(cell.supply(), List.of()).at(0.9).limit(period(4)))
                .isEqualTo(new Limit(0.9, List.of(period(4)), 10, 5));
    }

    /** As above: {2, 4} and {2, 4, 6} have slack 5, {4, 6} too; alone 2 and 6 have 10. */
    @Test
    void theSmallestIsNamedBeforeAndAfterTheDateToo() {
        var cell = new Periods().lot("A", 2, 6, 10).lot("B", 6, 6, 5).lot("C", 2, 2, 5);
        cell.order(2, 5).order(4, 5).order(6, 5);
        OpenAt figures = OpenTrays.of(cell.supply(), List.of()).at(0.9);

        assertThat(figures.limit(period(6))).isEqualTo(new Limit(0.9, List.of(period(4), period(6)), 15, 10));
        assertThat(figures.limit(period(2))).isEqualTo(new Limit(0.9, List.of(period(2), period(4)), 15, 10));
        assertThat(cell.open(2, 6)).containsExactly(5, 5, 5, 5, 5);
    }

    @Test
    void aLotOffersMoreAsItBecomesCertain() {
        var cell = new Periods().lot("A", new double[] {0.6, 0.95, 1}, new double[] {1, 0.99, 0.95, 0.9}, 4);

        assertThat(cell.open(1, 5)).containsExactly(0, 2, 3, 3, 0);
        assertThat(cell.order(2, 2).open(1, 5)).containsExactly(0, 0, 1, 1, 0);
    }

    @Test
    void anOverduePromiseStillTakesItsTraysToday() {
        var promise = new Promise("o1", 1, period(1).minusDays(20), 4, 0.9, 1);
        var lots = new Periods().lot("A", 1, 2, 10).supply().lots();
        var supply = new CellSupply(lots, List.of(promise), period(1));

        OpenAt figures = OpenTrays.of(supply, List.of(period(2))).at(0.9);

        assertThat(figures.open(period(2))).isEqualTo(6);
        assertThat(figures.limit(period(2)).dates()).containsExactly(period(1), period(2));
    }

    @Test
    void aLotThatEndedBeforeTodayOffersNothing() {
        var lots = new Periods().lot("A", 1, 2, 10).supply().lots();

        assertThat(OpenTrays.of(new CellSupply(lots, List.of(), period(3)), List.of(period(3)))
                        .at(0.9)
                        .open(period(3)))
                .isZero();
    }

    @Test
    void whilePromisesAreShortTheirShortageIsHeldBackElsewhere() {
        var cell = new Periods().lot("A", 1, 1, 10).lot("B", 5, 6, 50).order(1, 30);

        assertThat(cell.open(1, 6)).containsExactly(0, 0, 0, 0, 30, 30);
        assertThat(OpenTrays.of(cell.supply(), List.of()).everyPromiseFits()).isFalse();
    }

    @Test
    void amountsBeyondAnIntAddUpWithoutTurningNegative() {
        var cell = new Periods().lot("A", 1, 3, 10);
        cell.order(2, Integer.MAX_VALUE).order(2, Integer.MAX_VALUE).order(3, Integer.MAX_VALUE);

        assertThat(cell.open(1, 3)).containsExactly(0, 0, 0);
    }

    @Nested
    class WithPromisesOfSeveralConfidences {

        /** Certain lot of 10 from 1; a lot that is an even bet: 8 more at 0.5 on every date. */
        private Periods sureAndEvenBet() {
            return new Periods().lot("A", 1, 5, 10).lot("B", new double[] {0.6}, Periods.certain(8), 5);
        }

        @Test
        void aCertainPromiseTakesFromBothLevels() {
            var cell = sureAndEvenBet().order(2, 7, 0.9);

            assertThat(cell.open(2, 2, 0.9)).containsExactly(3);
            assertThat(cell.open(2, 2, 0.5)).containsExactly(11);
        }

        @Test
        void anEvenBetDoesNotTakeFromTheCertainLevelUntilItMust() {
            assertThat(sureAndEvenBet().order(2, 8, 0.5).open(2, 2, 0.9)).containsExactly(10);
            assertThat(sureAndEvenBet().order(2, 15, 0.5).open(2, 2, 0.9)).containsExactly(3);
        }

        @Test
        void theLimitNamesTheLevelThatBinds() {
            var supply = sureAndEvenBet().order(2, 15, 0.5).supply();

            assertThat(OpenTrays.of(supply, List.of(period(2))).at(0.9).limit(period(2)))
                    .isEqualTo(new Limit(0.5, List.of(period(2)), 18, 15));
        }
    }

    @Nested
    class Refuses {

        @Test
        void datesBeforeToday() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> OpenTrays.of(new Periods().supply(), List.of(period(0))))
                    .withMessageContaining(period(0).toString());
        }

        @Test
        void figuresOfDatesThatWereNotAskedFor() {
            OpenAt figures =
                    OpenTrays.of(new Periods().supply(), List.of(period(1))).at(0.9);

            assertThatIllegalArgumentException().isThrownBy(() -> figures.open(period(2)));
        }

        @Test
        void promisesOfLessThanNoTraysOrAnImpossibleConfidence() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new Promise("o1", 2, LocalDate.EPOCH, -1, 0.9, 1))
                    .withMessageContaining("-1");
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> new Promise("o1", 2, LocalDate.EPOCH, 1, 1.2, 1))
                    .withMessageContaining("1.2");
        }
    }
}
