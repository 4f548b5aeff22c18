package rootcast.availability;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;

/**
 * Open figures against tables from outside. Marks: V = printed in the source named; C = computed by hand from the
 * printed inputs with {@code min over s ≥ t of (on hand + receipts to s − orders to s)}.
 */
class TextbookCasesTest {

    /** Lots that never expire and one date per period: then open is available-to-promise with look-ahead. */
    @Nested
    class DurableGoods {

        /** Orlicky's MRP, Fig. 19-4, inputs V; look-ahead row C. Discrete or cumulative figures would say 92 or 122. */
        @Test
        void earlyPeriodsSay47BecauseLaterOrdersNeedTheRest() {
            var record = new Periods().receipt(1, 172);
            List.of(2, 4, 6, 8, 9, 10).forEach(period -> record.receipt(period, 150));
            ordersFromPeriod1(record, 80, 120, 75, 30, 20, 10);

            assertThat(record.open(1, 10)).containsExactly(47, 47, 47, 147, 147, 287, 287, 437, 587, 737);
        }

        /** Stevenson, industrial pumps: inputs and the first figure (11) V, the look-ahead row C. */
        @Test
        void pumps() {
            var record = new Periods().receipt(1, 64);
            List.of(3, 5, 7, 8).forEach(period -> record.receipt(period, 70));
            ordersFromPeriod1(record, 33, 20, 10, 4, 2);

            assertThat(record.open(1, 8)).containsExactly(11, 11, 67, 67, 135, 135, 205, 275);
        }

        /** The variant of the pumps; C. A web answer of "31 31 0 0 0 0 70 70" for it is wrong by the definition. */
        @Test
        void pumpsWithMoreOrders() {
            var record = new Periods().receipt(1, 64);
            List.of(3, 5, 7, 8).forEach(period -> record.receipt(period, 70));
            ordersFromPeriod1(record, 33, 25, 16, 11, 8, 3);

            assertThat(record.open(1, 8)).containsExactly(6, 6, 49, 49, 108, 108, 178, 248);
        }

        /** Eight-period record: discrete 91, 77, 72 V in periods 1, 4 and 7; their running sums are the look-ahead. */
        @Test
        void eightPeriodRecord() {
            var record = eightPeriods();
            ordersFromPeriod1(record, 25, 150, 49, 26, 75, 22, 68, 10);

            assertThat(record.open(1, 8)).containsExactly(91, 91, 91, 168, 168, 168, 240, 240);
        }

        /** The same record with 10 more in period 3: discrete 81, 77, 72 V. */
        @Test
        void eightPeriodRecordWithOneMoreOrder() {
            var record = eightPeriods();
            ordersFromPeriod1(record, 25, 150, 49, 26, 75, 22, 68, 10);
            record.order(3, 10);

            assertThat(record.open(1, 8)).containsExactly(81, 81, 81, 158, 158, 158, 230, 230);
        }

        /** A published answer clamps negatives to zero and prints 45 for period 1 (V, seen); the true row is C. */
        @Test
        void aShortPeriodTakesFromEarlierOnesInsteadOfBeingClamped() {
            var record = new Periods().receipt(1, 56);
            int[] receipts = {30, 35, 0, 24, 0, 25, 44, 28};
            for (int i = 0; i < receipts.length; i++) {
                record.receipt(i + 1, receipts[i]);
            }
            ordersFromPeriod1(record, 41, 19, 39, 11, 25, 20, 10, 0);

            assertThat(record.open(1, 8)).containsExactly(10, 10, 10, 10, 10, 15, 49, 77);
        }

        private Periods eightPeriods() {
            return new Periods().receipt(1, 65).receipt(1, 250).receipt(4, 200).receipt(7, 150);
        }

        private void ordersFromPeriod1(Periods record, int... trays) {
            for (int i = 0; i < trays.length; i++) {
                record.order(i + 1, trays[i]);
            }
        }
    }

    /** Four lots with windows; every figure C, by linear program, outside this code (facts-operations A3). */
    @Nested
    class LotsThatExpire {

        @Test
        void largestSingleExtraPromiseWhenNothingIsBooked() {
            assertThat(lots().open(9, 17)).containsExactly(0, 30, 70, 100, 80, 50, 50, 50, 0);
        }

        @Test
        void largestSingleExtraPromiseWith30In11() {
            assertThat(lots().order(11, 30).open(9, 17)).containsExactly(0, 30, 40, 70, 80, 50, 50, 50, 0);
        }

        @Test
        void largestSingleExtraPromiseWith30In11And30In13() {
            assertThat(lots().order(11, 30).order(13, 30).open(9, 17))
                    .containsExactly(0, 30, 40, 60, 50, 50, 50, 50, 0);
        }

        @Test
        void largestSingleExtraPromiseWith30In11And30In13And20In15() {
            assertThat(lots().order(11, 30).order(13, 30).order(15, 20).open(9, 17))
                    .containsExactly(0, 30, 40, 40, 30, 30, 30, 30, 0);
        }

        @Test
        void nothingIsOpenWhenCase1TakesEveryTray() {
            assertThat(case1().open(9, 17)).containsOnly(0).hasSize(9);
        }

        @Test
        void case1KeepsAll120WithThePicksOfEarliestExpiry() {
            var allotment = Allotment.of(case1().supply());

            assertThat(allotment.keptTrays()).isEqualTo(120);
            assertThat(allotment.promises())
                    .extracting(KeptPromise::shares)
                    .containsExactly(
                            List.of(new Share("B", 30)),
                            List.of(new Share("B", 10), new Share("C", 15)),
                            List.of(new Share("C", 15), new Share("A", 15)),
                            List.of(new Share("A", 15), new Share("D", 20)));
        }

        @Test
        void case2Keeps90Of110AndTheLatestPromiseIsShort() {
            var supply = case2().supply();

            assertThat(Allotment.of(supply).keptTrays()).isEqualTo(90);
            assertThat(OpenTrays.of(supply, List.of()).everyPromiseFits()).isFalse();
            assertThat(Shortfall.of(supply))
                    .containsExactly(new Shortfall(supply.promises().get(2), 20));
        }

        /** 13 and 15 want 100; of A, C and D only 80 can reach them. Weeks 13 to 15 in one run have no less. */
        @Test
        void case2IsLimitedByWeeks13And15Together() {
            var limit = OpenTrays.of(case2().supply(), Periods.periods(9, 17))
                    .at(0.9)
                    .limit(Periods.period(15));

            assertThat(limit).isEqualTo(new Limit(0.9, List.of(Periods.period(13), Periods.period(15)), 80, 100));
            assertThat(limit.slack()).isEqualTo(-20);
        }

        private Periods lots() {
            return new Periods()
                    .lot("A", 10, 16, 30)
                    .lot("B", 11, 12, 40)
                    .lot("C", 12, 13, 30)
                    .lot("D", 13, 16, 20);
        }

        private Periods case1() {
            return lots().order(11, 30).order(12, 25).order(13, 30).order(15, 35);
        }

        private Periods case2() {
            return lots().order(11, 10).order(13, 60).order(15, 40);
        }
    }
}
