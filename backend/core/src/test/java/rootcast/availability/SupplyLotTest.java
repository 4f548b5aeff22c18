package rootcast.availability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static rootcast.availability.Periods.period;

import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Offers worked by hand, and by trying every tray and day. */
class SupplyLotTest {

    /** Ready with 0.2, 0.6, 0.95 and then for certain; 1, 0.99, 0.95, 0.9 and 0.4 for at least 0 to 4 trays. */
    private static final SupplyLot GROWING = TableLot.product(
            "b1", period(1), new double[] {0.2, 0.6, 0.95, 1}, new double[] {1, 0.99, 0.95, 0.9, 0.4}, period(6));

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
    void oddsThatRoundJustBelowTheConfidenceReachIt() {
        // 0.7 + 0.1 is 0.7999999999999999 in binary
        var lot = TableLot.product("b2", period(1), new double[] {0.7 + 0.1}, new double[] {1, 1}, period(2));

        assertThat(0.7 + 0.1).isLessThan(0.8);
        assertThat(lot.traysAt(period(1), 0.8)).isEqualTo(1);
        assertThat(lot.traysAt(period(1), 0.8 + 1e-9)).isZero();
    }

    @Test
    void firstUsableDateIsTheFirstThatOffersATray() {
        assertThat(GROWING.usableFrom(period(1), 0.9)).isEqualTo(period(3));
        assertThat(GROWING.usableFrom(period(5), 0.9)).isEqualTo(period(5));
        assertThat(GROWING.usableFrom(period(6), 0.9)).isEqualTo(period(6));
        assertThat(GROWING.usableFrom(period(7), 0.9)).isNull();
        assertThat(GROWING.usableFrom(period(1), 0.995)).isNull();
    }

    /** By day: 1, 3, 4, 2 trays at 0.9; the last of them a day longer at even odds. */
    @Test
    void traysComeAndGoOneAfterAnother() {
        var lot = TableLot.of("b3", period(2), new double[][] {
            {1, 0.95, 0.5, 0, 0},
            {1, 0.99, 0.98, 0.9, 0.6},
            {1, 1, 0.99, 0.98, 0.91},
            {1, 0.97, 0.9, 0.8, 0.5},
            {1, 0.6, 0.3, 0.1, 0},
        });

        assertThat(offers(lot, 0.9)).containsExactly(0, 1, 3, 4, 2, 0, 0);
        assertThat(offers(lot, 0.5)).containsExactly(0, 2, 4, 4, 4, 1, 0);
        assertThat(lot.usableUntilInclusive(0.9)).isEqualTo(period(5));
        assertThat(lot.usableUntilInclusive(0.5)).isEqualTo(period(6));
        assertThat(lot.usableUntilInclusive(0.999)).isEqualTo(period(4));
        assertThat(lot.usableUntilInclusive(1)).isEqualTo(period(4));
    }

    /**
     * Tray 2 is there on periods 1, 2 and 4, 5 but not on 3: it counts around period 5, where it is likeliest. Tray 3 is
     * there on 1 only, which tray 2 has lost.
     */
    @Test
    void ofABrokenWindowTheRunAroundTheLikeliestDayCounts() {
        var lot = TableLot.of("b4", period(1), new double[][] {
            {1, 0.95, 0.93, 0.91},
            {1, 0.95, 0.92, 0.1},
            {1, 0.95, 0.5, 0.1},
            {1, 0.95, 0.92, 0.1},
            {1, 0.95, 0.94, 0.1},
        });

        assertThat(offers(lot, 0.9)).containsExactly(1, 1, 1, 2, 2, 0, 0);
        assertThat(offers(lot, 0.5)).containsExactly(3, 2, 2, 2, 2, 0, 0);
    }

    @Test
    void offersOfAnyOddsRiseThenFallAreNestedAndNeverMoreThanTheOddsSupport() {
        var random = new Random(20261128);
        int cut = 0;
        for (int run = 0; run < 2_000; run++) {
            double[][] atLeast = anyOdds(random);
            SupplyLot lot = TableLot.of("b", period(1), atLeast);
            List<Integer> before = offers(lot, 0.95);
            for (double confidence : new double[] {0.9, 0.8, 0.5, 0.3}) {
                List<Integer> now = offers(lot, confidence);
                assertThat(isRisingThenFalling(now)).as("run %d: %s", run, now).isTrue();
                for (int day = 0; day < now.size(); day++) {
                    assertThat(now.get(day)).as("run %d", run).isGreaterThanOrEqualTo(before.get(day));
                    int tray = now.get(day);
                    assertThat(tray == 0 || atLeast[day][tray] >= confidence).isTrue();
                    boolean more = day < atLeast.length
                            && tray + 1 < atLeast[day].length
                            && atLeast[day][tray + 1] >= confidence;
                    cut += more ? 1 : 0;
                }
                before = now;
            }
        }
        assertThat(cut).as("days on which a broken window took a tray away").isGreaterThan(500);
    }

    private static double[][] anyOdds(Random random) {
        double[][] atLeast = new double[7][6];
        for (double[] day : atLeast) {
            day[0] = 1;
            for (int n = 1; n < day.length; n++) {
                day[n] = day[n - 1] * (1 - random.nextDouble() / 3);
            }
        }
        return atLeast;
    }

    private static boolean isRisingThenFalling(List<Integer> offers) {
        int peak = offers.indexOf(offers.stream().max(Integer::compare).orElseThrow());
        return IntStream.range(1, offers.size())
                .allMatch(i -> i <= peak ? offers.get(i) >= offers.get(i - 1) : offers.get(i) <= offers.get(i - 1));
    }

    private static List<Integer> offers(SupplyLot lot, double confidence) {
        return Periods.periods(1, 7).stream()
                .map(day -> lot.traysAt(day, confidence))
                .toList();
    }

    @Test
    void confidencesOutsideTheirRangeAreRefused() {
        for (double confidence : new double[] {0, -0.5, 1.0000001, Double.NaN}) {
            assertThatIllegalArgumentException()
                    .isThrownBy(() -> GROWING.traysAt(period(3), confidence))
                    .withMessageContaining(String.valueOf(confidence));
        }
    }
}
