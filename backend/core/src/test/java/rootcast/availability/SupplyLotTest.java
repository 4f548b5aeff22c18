package rootcast.availability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.assertThatIllegalStateException;
import static rootcast.availability.Periods.period;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Products of odds worked by hand. */
class SupplyLotTest {

    /** Ready with 0.2, 0.6, 0.95 and then for certain; 1, 0.99, 0.95, 0.9 and 0.4 for at least 0 to 4 trays. */
    private static final SupplyLot GROWING = new SupplyLot(
            "b1",
            ReadyOdds.daily(period(1), new double[] {0.2, 0.6, 0.95, 1}),
            new double[] {1, 0.99, 0.95, 0.9, 0.4},
            period(6));

    @ParameterizedTest(name = "period {0} at {1}: {2} trays, {3}")
    @CsvSource({
        "1, 0.9,  0, hardly ready yet",
        "2, 0.5,  3, 0.6 × 0.9 = 0.54 but 0.6 × 0.4 = 0.24",
        "2, 0.59, 1, 0.6 × 0.99 = 0.594 but 0.6 × 0.95 = 0.57",
        "2, 0.6,  0, certain of 0 trays only: 0.6 × 0.99 is below",
        "3, 0.9,  2, 0.95 × 0.95 = 0.9025 but 0.95 × 0.9 = 0.855",
        "4, 0.9,  3, exactly 1 × 0.9",
        "6, 0.4,  4, the last usable date still counts",
        "7, 0.4,  0, a day later nothing does",
        "4, 1,    0, only 0 trays are certain",
    })
    void offersTheMostTraysWhoseOddsReachTheConfidence(int period, double confidence, int trays, String because) {
        assertThat(GROWING.traysAt(period(period), confidence)).as(because).isEqualTo(trays);
    }

    @Test
    void aProductThatRoundsJustBelowTheConfidenceReachesIt() {
        // 0.7 + 0.1 is 0.7999999999999999 in binary
        var lot = new SupplyLot(
                "b2", ReadyOdds.daily(period(1), new double[] {0.7 + 0.1}), new double[] {1, 1}, period(2));

        assertThat(0.7 + 0.1).isLessThan(0.8);
        assertThat(lot.traysAt(period(1), 0.8)).isEqualTo(1);
        assertThat(lot.traysAt(period(1), 0.8 + 1e-9)).isZero();
    }

    @Test
    void firstUsableDateIsTheFirstThatOffersATray() {
        assertThat(GROWING.usableFrom(period(1), 0.9)).isEqualTo(period(3));
        assertThat(GROWING.usableFrom(period(5), 0.9)).isEqualTo(period(5));
        assertThat(GROWING.usableFrom(period(7), 0.9)).isNull();
        assertThat(GROWING.usableFrom(period(1), 0.995)).isNull();
    }

    @Nested
    class Refuses {

        @Test
        void aTailThatRises() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> lot(1, 0.8, 0.81))
                    .withMessageContaining("0.81")
                    .withMessageContaining("0.8");
        }

        @Test
        void aTailThatDoesNotBeginWithCertainty() {
            assertThatIllegalArgumentException().isThrownBy(() -> lot(0.9, 0.8));
            assertThatIllegalArgumentException().isThrownBy(SupplyLotTest.this::emptyTail);
        }

        @Test
        void oddsThatAreNoNumbersOrNegative() {
            assertThatIllegalArgumentException().isThrownBy(() -> lot(1, Double.NaN));
            assertThatIllegalArgumentException().isThrownBy(() -> lot(1, -0.1));
        }

        @Test
        void confidencesOutsideTheirRange() {
            for (double confidence : new double[] {0, -0.5, 1.0000001, Double.NaN}) {
                assertThatIllegalArgumentException()
                        .isThrownBy(() -> GROWING.traysAt(period(3), confidence))
                        .withMessageContaining(String.valueOf(confidence));
            }
        }

        @Test
        void readyTablesThatFallOrAreEmpty() {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> ReadyOdds.daily(period(1), new double[] {0.5, 0.4}))
                    .withMessageContaining("0.4")
                    .withMessageContaining(period(2).toString());
            assertThatIllegalArgumentException().isThrownBy(() -> ReadyOdds.daily(period(1), new double[0]));
        }

        @Test
        void anOutlookWhoseOddsFallFromOneDateToTheNext() {
            ReadyOdds falling = date -> date.isAfter(period(2)) ? 0.5 : 0.6;
            var supply = new CellSupply(
                    List.of(new SupplyLot("b3", falling, new double[] {1, 1}, period(9))), List.of(), period(1));

            assertThatIllegalStateException()
                    .isThrownBy(() -> OpenTrays.of(supply, List.of(period(2), period(3))))
                    .withMessageContaining("b3")
                    .withMessageContaining("0.6")
                    .withMessageContaining(period(3).toString());
        }

        @Test
        void oddsOutsideZeroToOne() {
            var lot = new SupplyLot("b4", date -> 1.5, new double[] {1, 1}, period(9));

            assertThatIllegalStateException().isThrownBy(() -> lot.readyBy(period(1)));
        }

        private SupplyLot lot(double... tail) {
            return new SupplyLot("b", ReadyOdds.certainFrom(LocalDate.EPOCH), tail, period(1));
        }
    }

    private SupplyLot emptyTail() {
        return new SupplyLot("b", ReadyOdds.certainFrom(LocalDate.EPOCH), new double[0], period(1));
    }
}
