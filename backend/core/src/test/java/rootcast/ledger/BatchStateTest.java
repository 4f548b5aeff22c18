package rootcast.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.ledger.OneBatch.hour;

import java.lang.reflect.Method;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.UUID;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.crop.Stage;
import rootcast.ledger.BatchState.PlantsAt;
import rootcast.ledger.BatchState.SampledAt;

/** What a batch's entries add up to, by hand: 980 plants in 10 trays of 100 cells, sold with 90 plants each. */
class BatchStateTest {

    @Test
    void aFullCountSetsTheLivingPlantsAndBooksTheDifference() {
        OneBatch batch = OneBatch.ofTenTrays().write(10, loss(30)).write(20, new What.Count(940));

        assertThat(batch.now().alivePlants()).isEqualTo(940);
        assertThat(batch.now().lost()).isEqualTo(Map.of(Cause.BOTRYTIS, 30, Cause.COUNT_DIFFERENCE, 10));
        assertThat(batch.now().lostPlants()).isEqualTo(40);
        assertThat(batch.now().saleableTrays()).as("940 / 90").isEqualTo(10);
    }

    @Test
    void aCountThatFindsMoreThanTheBooksBooksTheDifferenceNegative() {
        OneBatch batch = OneBatch.ofTenTrays().write(10, loss(30)).write(20, new What.Count(960));

        assertThat(batch.now().lost()).isEqualTo(Map.of(Cause.BOTRYTIS, 30, Cause.COUNT_DIFFERENCE, -10));
        assertThat(batch.now().lostPlants()).isEqualTo(20);
    }

    /** 10 trays have 1000 cells but 980 were stuck; 8 of 200 cells blank leave 192/200 of 980 = 940.8. */
    @Test
    void aSampleStandsForAllPlacesThatWereStuck() {
        var sample = new Sample(2, 200, 8);
        OneBatch batch = OneBatch.ofTenTrays().write(10, new What.SampledCount(sample));

        assertThat(batch.now().alivePlants()).isEqualTo(941);
        assertThat(batch.now().lost()).isEqualTo(Map.of(Cause.COUNT_DIFFERENCE, 39));
        assertThat(batch.now().sampledCount()).isEqualTo(new SampledAt(hour(10), sample, 980, 941));
    }

    /** After 3 trays left, 7 trays with 700 cells remain, fewer than the 710 plants not shipped; half of them is 350. */
    @Test
    void aSampleStandsForNoMoreCellsThanAreOnTheBench() {
        var sample = new Sample(1, 100, 50);
        OneBatch batch = OneBatch.ofTenTrays()
                .write(10, new What.StageReached(Stage.ROOT))
                .write(20, new What.Ship(3, 270, null))
                .write(30, new What.SampledCount(sample));

        assertThat(batch.now().sampledCount()).isEqualTo(new SampledAt(hour(30), sample, 700, 350));
        assertThat(batch.now().alivePlants()).isEqualTo(350);
    }

    @ParameterizedTest(name = "{2} blanks of {1} cells in {0} places: {3}")
    @CsvSource({
        "1000, 100,   0, 1000",
        "1000, 100, 100,    0",
        "1000, 100,   7,  930",
        " 980, 200,   8,  941", // 940.8
        "   7,   2,   1,    4", // 3.5, halves up
        "  10,   3,   1,    7", // 6.67
        "   1,   1,   0,    1",
        "   0,   1,   0,    0",
        "40000000, 40000000, 1, 39999999",
    })
    void theEstimateIsTheSamplesOwnShareOfThePlaces(int places, int cells, int blanks, int alive) {
        assertThat(new Sample(1, cells, blanks).alivePlants(places)).isEqualTo(alive);
    }

    @Test
    void theEstimateLiesBetweenThePlantsSeenAndThePlacesNotSeenBlank() {
        var random = new Random(31);
        for (int run = 0; run < 20_000; run++) {
            int places = 1 + random.nextInt(2_000);
            int cells = 1 + random.nextInt(places);
            int blanks = random.nextInt(cells + 1);

            assertThat(new Sample(1, cells, blanks).alivePlants(places))
                    .as("seed 31: %d blanks of %d cells in %d places", blanks, cells, places)
                    .isBetween(cells - blanks, places - blanks);
        }
    }

    @Test
    void lossesAndShipmentsAreKeptSinceTheLastFullCountAndASampleLeavesThem() {
        var sample = new Sample(1, 10, 0);
        OneBatch batch = OneBatch.ofTenTrays()
                .write(5, new What.StageReached(Stage.ROOT))
                .write(10, loss(30))
                .write(20, new What.Count(940))
                .write(30, loss(20))
                .write(40, new What.Ship(2, 190, null))
                .write(50, new What.SampledCount(sample));

        assertThat(batch.at(19).lossesSince()).containsExactly(new PlantsAt(hour(10), 30));
        assertThat(batch.now().fullCount()).isEqualTo(new PlantsAt(hour(20), 940));
        assertThat(batch.now().lossesSince()).containsExactly(new PlantsAt(hour(30), 20));
        assertThat(batch.now().shippedSince()).containsExactly(new PlantsAt(hour(40), 190));
        assertThat(batch.write(60, new What.Count(700)).now().sampledCount()).isNull();
        assertThat(batch.now().lossesSince()).isEmpty();
        assertThat(batch.now().shippedSince()).isEmpty();
    }

    @Test
    void traysShippedForAnOrderLineAddUpAndOthersDoNotCountForIt() {
        var first = new OrderLine(new UUID(1, 1), 1);
        var second = new OrderLine(new UUID(1, 1), 2);
        OneBatch batch = OneBatch.ofTenTrays()
                .write(5, new What.StageReached(Stage.READY))
                .write(10, new What.Ship(2, 180, first))
                .write(20, new What.Ship(1, 95, second))
                .write(30, new What.Ship(3, 270, first))
                .write(40, new What.Ship(1, 90, null));

        assertThat(batch.now().shippedTo()).isEqualTo(Map.of(first, 5, second, 1));
        assertThat(batch.now().shippedTrays()).isEqualTo(7);
        assertThat(batch.now().shippedPlants()).isEqualTo(635);
        assertThat(batch.now().benchTrays()).isEqualTo(3);
    }

    @Test
    void aBatchIsShippedOnceTraysLeftAndNoPlantIsAliveAndNotIfAllDied() {
        OneBatch shipped = OneBatch.ofTenTrays()
                .write(5, new What.StageReached(Stage.ROOT))
                .write(10, new What.Ship(10, 900, null))
                .write(20, loss(80));
        OneBatch dead = OneBatch.ofTenTrays()
                .write(5, new What.StageReached(Stage.CALLUS))
                .write(10, loss(980));

        assertThat(shipped.at(19).stage()).isEqualTo(Stage.ROOT);
        assertThat(shipped.now().stage()).isEqualTo(Stage.SHIP);
        assertThat(shipped.now().isFinished()).isTrue();
        assertThat(dead.now().stage()).isEqualTo(Stage.CALLUS);
        assertThat(dead.now().isFinished()).isTrue();
    }

    /** Ten trays hold 980 plants; patched to 90 each they fill 10, and the last 80 stay without a tray of their own. */
    @Test
    void plantsLeftOverFromPatchingStayAliveWithoutATray() {
        OneBatch batch = OneBatch.ofTenTrays()
                .write(5, new What.StageReached(Stage.READY))
                .write(10, new What.Ship(10, 900, null));

        assertThat(batch.now().benchTrays()).isZero();
        assertThat(batch.now().places()).isZero();
        assertThat(batch.now().alivePlants()).isEqualTo(80);
    }

    @Test
    void theLedgerOffersNoWayToChangeOrRemoveWhatItHolds() {
        assertThat(Ledger.class.getDeclaredMethods())
                .extracting(Method::getName)
                .containsExactlyInAnyOrder("batch", "entriesOf", "open", "append");
    }

    @Test
    void itStandsWhereItWasCarriedLastBeforeTheMoment() {
        OneBatch batch = OneBatch.ofTenTrays().write(10, new What.Move("B")).write(20, new What.Move("C"));

        assertThat(batch.now().houseAt(hour(-1))).as("where it was to be stuck").isEqualTo("A");
        assertThat(batch.now().houseAt(hour(9.9))).isEqualTo("A");
        assertThat(batch.now().houseAt(hour(10))).isEqualTo("B");
        assertThat(batch.now().houseAt(hour(19.9))).isEqualTo("B");
        assertThat(batch.now().houseAt(hour(99))).isEqualTo("C");
    }

    @Test
    void accountsThatHoldNothingAreNotShown() {
        OneBatch batch = OneBatch.ofTenTrays()
                .write(5, new What.StageReached(Stage.ROOT))
                .write(10, new What.Ship(1, 95, null))
                .write(20, loss(885));

        assertThat(OneBatch.ofTenTrays().now().balances())
                .isEqualTo(Map.of(Account.SUPPLIER, -980L, Account.aliveIn("A"), 980L));
        assertThat(batch.now().balances())
                .isEqualTo(Map.of(Account.SUPPLIER, -980L, Account.SHIPPED, 95L, Account.lostTo(Cause.BOTRYTIS), 885L));
        assertThat(BatchState.beforeSticking(batch.batch()).balances()).isEmpty();
        assertThat(BatchState.beforeSticking(batch.batch()).isFinished()).isFalse();
    }

    @Test
    void postingsAddUpToTheAccountsAndWhatMovesNothingPostsNothing() {
        OneBatch batch = OneBatch.ofTenTrays()
                .write(5, new What.StageReached(Stage.ROOT))
                .write(10, loss(30))
                .write(20, new What.Move("B"));
        List<Posting> all = Stream.of(1, 2, 3, 4)
                .flatMap(number -> batch.postingsOf(number).stream())
                .toList();

        assertThat(batch.postingsOf(2)).isEmpty();
        assertThat(batch.books().steps().get(1).postings()).isEmpty();
        assertThat(batch.books().steps().get(2).postings())
                .containsExactlyInAnyOrder(
                        new Posting(Account.aliveIn("A"), -30, hour(10)),
                        new Posting(Account.lostTo(Cause.BOTRYTIS), 30, hour(10)));
        assertThat(BatchFold.balances(all))
                .isEqualTo(Map.of(
                        Account.SUPPLIER, -980L, Account.aliveIn("B"), 950L, Account.lostTo(Cause.BOTRYTIS), 30L));
        assertThat(batch.now().reached(Stage.ROOT)).contains(hour(5));
        assertThat(batch.now().reached(Stage.READY)).isEmpty();
        assertThat(batch.books().impossible()).isEmpty();
        assertThat(batch.books().stateAt(hour(-1))).isEmpty();
        assertThat(batch.at(10).alivePlants()).isEqualTo(950);
    }

    @Test
    void everyKindOfEntryGoesByItsWord() {
        assertThat(Stream.of(
                                new What.Stick("A", 1, 1),
                                loss(1),
                                new What.Count(1),
                                new What.SampledCount(new Sample(1, 1, 0)),
                                new What.StageReached(Stage.CALLUS),
                                new What.Look(Stage.CALLUS, 1, 0),
                                new What.Move("B"),
                                new What.Ship(1, 1, null),
                                new What.Reversal(new UUID(0, 1), "a mistake"))
                        .map(What::kind))
                .containsExactly("stick", "loss", "count", "count", "stage", "look", "move", "ship", "reversal");
    }

    @Test
    void causesGoByTheirWordsAndNobodyReportsACountDifference() {
        assertThat(Cause.reported(" Dry_Down ")).contains(Cause.DRY_DOWN);
        assertThat(Cause.reported("damping off")).contains(Cause.DAMPING_OFF);
        assertThat(Cause.reported("count-difference")).isEmpty();
        assertThat(Cause.reported("")).isEmpty();
        assertThat(Cause.COUNT_DIFFERENCE.wire()).isEqualTo("count-difference");
    }

    private static What loss(int plants) {
        return new What.Loss(plants, Cause.BOTRYTIS);
    }
}
