package rootcast.outlook;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static rootcast.outlook.GrowerFixture.CROP;
import static rootcast.outlook.GrowerFixture.STUCK;
import static rootcast.outlook.GrowerFixture.TRAY_105;
import static rootcast.outlook.GrowerFixture.constant;
import static rootcast.outlook.GrowerFixture.days;
import static rootcast.outlook.GrowerFixture.daysAfterSticking;
import static rootcast.outlook.GrowerFixture.houses;

import java.time.Duration;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.crop.Stage;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.BatchState;
import rootcast.ledger.Cause;
import rootcast.ledger.Entry;
import rootcast.ledger.Sample;
import rootcast.ledger.What;

/**
 * 1,050 plants at constant 22 °C: ready after 26 days with a spread of 0.1 in the logarithm of the rate, 0.97 × 0.96 × 0.98 =
 * 91 % of them alive.
 */
class PlausibilityTest {

    private static final Batch BATCH = new Batch("B1", "north", "lav-blue", TRAY_105, STUCK);

    private static Entry entry(int number, double day, What what) {
        return new Entry(
                new UUID(0, number), new FactPosition(number), BATCH.id(), days(day), days(day), "ana", what, null);
    }

    private static Optional<Doubt> doubt(double day, What what) {
        return doubt(List.of(entry(1, 0, new What.Stick("A", 10, 1_050))), day, what);
    }

    private static Optional<Doubt> doubt(List<Entry> before, double day, What what) {
        BatchState stuck = BatchFold.of(BATCH, before).state();
        HouseCurves curves = houses(days(40), "A", constant(22, STUCK.minus(Duration.ofDays(2)), days(40)));
        BatchOutlook outlook = BatchOutlook.of(HistoryOfBatch.of(stuck), CROP, TRAY_105, curves);
        return new Plausibility(stuck, outlook).of(entry(9, day, what));
    }

    @ParameterizedTest(name = "{1} alive on day {0}: asked {2}")
    @CsvSource({
        "11,   164, true",
        "11, 1_000, false", // nearer than a tenth to the books
        "26,   940, false", // 958 are expected
        "26,   700, true",
        "26,     0, true",
    })
    void asksAboutACountThatHardlyAnyBatchWouldHave(double day, String plants, boolean asked) {
        int counted = Integer.parseInt(plants.replace("_", ""));

        assertThat(doubt(day, new What.Count(counted)).isPresent()).isEqualTo(asked);
    }

    @Test
    void givesBothFiguresAndHowLikelyItIs() {
        assertThat(doubt(26, new What.Count(164)).orElseThrow()).isInstanceOfSatisfying(Doubt.OfPlants.class, no -> {
            assertThat(no.seenPlants()).isEqualTo(164);
            assertThat(no.bookedPlants()).isEqualTo(1_050);
            assertThat(no.leastPlants()).isBetween(850, 957);
            assertThat(no.mostPlants()).isBetween(959, 1_050);
            assertThat(no.probability()).isCloseTo(0, within(1e-9));
        });
    }

    @Test
    void asksAboutALossOfHalfABatchAndNotOfSomePlants() {
        assertThat(doubt(3, new What.Loss(525, Cause.DAMAGE))).isPresent();
        assertThat(doubt(0.1, new What.Loss(60, Cause.DAMAGE))).isEmpty();
    }

    /**
     * 5 blanks of 20 cells: with 9.1 % blank, 1 − the binomial sum up to 4 is 0.03; 12 of 30 is rarer than 1 in 10,000. As
     * counts of all plants both would be asked about.
     */
    @Test
    void allowsASmallSampleItsChance() {
        assertThat(doubt(26, new What.SampledCount(new Sample(1, 20, 5)))).isEmpty();
        assertThat(doubt(26, new What.Count(788))).isPresent();
        assertThat(doubt(26, new What.SampledCount(new Sample(1, 30, 12)))).isPresent();
    }

    /**
     * Right after a full count nothing is uncertain but the sample: so many plants in 1,050 places, blanks among the cells looked at are
     * hypergeometric. Expected values are sums of exact fractions, C(b, k) · C(1050 − b, n − k) / C(1050, n), in Python.
     */
    @ParameterizedTest(name = "{2} blanks among {1} cells where {0} plants stand: {3}")
    @CsvSource({
        "1000, 30, 5, 0.011538701634935478",
        "1000, 30, 6, 0.0021266857204299836",
        "1000, 30, 8, 0.00003934359504114969",
        "525, 30, 7, 0.0023100663902112877",
        "525, 30, 6, 0.000613080504167819",
    })
    void saysHowLikelyASampleIs(int plants, int cells, int blanks, double probability) {
        List<Entry> counted = List.of(entry(1, 0, new What.Stick("A", 10, 1_050)), entry(2, 1, new What.Count(plants)));
        Optional<Doubt> doubt = doubt(counted, 1, new What.SampledCount(new Sample(1, cells, blanks)));

        assertThat(doubt.isPresent()).isEqualTo(probability < 0.01);
        doubt.ifPresent(asked ->
                assertThat(((Doubt.OfPlants) asked).probability()).isCloseTo(probability, within(1e-9 * probability)));
    }

    /** ln(26/20) / 0.1 = 2.62 and ln(26/21) / 0.1 = 2.14 standard deviations: 0.0044 and 0.0163 of the normal. */
    @Test
    void asksAboutAStageThatComesBeforeAlmostAnyBatchHasIt() {
        assertThat(doubt(20, new What.StageReached(Stage.READY)).orElseThrow())
                .isInstanceOfSatisfying(Doubt.OfStage.class, no -> {
                    assertThat(no.stage()).isEqualTo(Stage.READY);
                    assertThat(no.probability()).isCloseTo(0.0044, within(0.0006));
                    assertThat(daysAfterSticking(no.expected().p50())).isCloseTo(26, within(0.1));
                });
        assertThat(doubt(21, new What.StageReached(Stage.READY))).isEmpty();
        assertThat(doubt(60, new What.StageReached(Stage.READY))).isEmpty();
    }

    @Test
    void takesALookThatFoundNineInTenForTheStage() {
        assertThat(doubt(11, new What.Look(Stage.READY, 50, 45))).isPresent();
        assertThat(doubt(11, new What.Look(Stage.READY, 50, 44))).isEmpty();
    }

    @Test
    void asksNothingAboutWhatNobodyForetells() {
        assertThat(doubt(11, new What.Move("B"))).isEmpty();
    }
}
