package rootcast.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.ledger.OneBatch.entry;
import static rootcast.ledger.OneBatch.hour;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import rootcast.crop.Stage;
import rootcast.ledger.BatchState.Placement;

/** Facts that arrive after later ones were recorded. 980 plants are stuck in house A at hour 0. */
class LateEntriesTest {

    private static final Account ALIVE_IN_A = Account.aliveIn("A");
    private static final Account ALIVE_IN_B = Account.aliveIn("B");
    private static final Account ROT = Account.lostTo(Cause.ROT);
    private static final Account DIFFERENCE = Account.lostTo(Cause.COUNT_DIFFERENCE);

    @Test
    void aLossFromBeforeACountExplainsPlantsTheCountHadMissed() {
        OneBatch batch = OneBatch.ofTenTrays().write(30, new What.Count(900)).write(10, rot(50));

        assertThat(batch.now().alivePlants()).isEqualTo(900);
        assertThat(batch.now().lost()).isEqualTo(Map.of(Cause.ROT, 50, Cause.COUNT_DIFFERENCE, 30));
        assertThat(batch.at(10).alivePlants()).isEqualTo(930);
        assertThat(batch.postingsOf(3))
                .containsExactlyInAnyOrder(
                        new Posting(ALIVE_IN_A, -50, hour(10)),
                        new Posting(ROT, 50, hour(10)),
                        new Posting(ALIVE_IN_A, 50, hour(30)),
                        new Posting(DIFFERENCE, -50, hour(30)));
    }

    @Test
    void aLossLargerThanWhatTheCountMissedLeavesPlantsFoundAgain() {
        OneBatch batch = OneBatch.ofTenTrays().write(30, new What.Count(960)).write(10, rot(50));

        assertThat(batch.now().alivePlants()).isEqualTo(960);
        assertThat(batch.now().lost()).isEqualTo(Map.of(Cause.ROT, 50, Cause.COUNT_DIFFERENCE, -30));
    }

    @Test
    void aLossFromAfterTheCountTakesPlantsFromIt() {
        OneBatch batch = OneBatch.ofTenTrays()
                .write(30, new What.Count(900))
                .write(40, rot(5))
                .write(35, rot(50));

        assertThat(batch.now().alivePlants()).isEqualTo(845);
        assertThat(batch.postingsOf(4))
                .containsExactlyInAnyOrder(new Posting(ALIVE_IN_A, -50, hour(35)), new Posting(ROT, 50, hour(35)));
    }

    /** 980, loss 20, counted 950 (10 missed), loss 30, counted 880 (40 missed). Of these 40 the count of 900 takes 20 over. */
    @Test
    void aCountBetweenOthersTakesItsPartOfTheNextDifference() {
        OneBatch batch = OneBatch.ofTenTrays()
                .write(5, rot(20))
                .write(10, new What.Count(950))
                .write(20, rot(30))
                .write(30, new What.Count(880))
                .write(25, new What.Count(900));

        assertThat(batch.now().alivePlants()).isEqualTo(880);
        assertThat(batch.now().lost()).isEqualTo(Map.of(Cause.ROT, 50, Cause.COUNT_DIFFERENCE, 50));
        assertThat(batch.at(25).alivePlants()).isEqualTo(900);
        assertThat(batch.postingsOf(6))
                .containsExactlyInAnyOrder(
                        new Posting(ALIVE_IN_A, -20, hour(25)),
                        new Posting(DIFFERENCE, 20, hour(25)),
                        new Posting(ALIVE_IN_A, 20, hour(30)),
                        new Posting(DIFFERENCE, -20, hour(30)));
    }

    @Test
    void reversingALossFromBeforeACountMakesItsPlantsMissedOnes() {
        OneBatch batch = OneBatch.ofTenTrays()
                .write(10, rot(50))
                .write(30, new What.Count(900))
                .write(40, new What.Reversal(entry(2), "another batch"));

        assertThat(batch.now().alivePlants()).isEqualTo(900);
        assertThat(batch.now().lost()).isEqualTo(Map.of(Cause.COUNT_DIFFERENCE, 80));
        assertThat(batch.postingsOf(4))
                .containsExactlyInAnyOrder(
                        new Posting(ALIVE_IN_A, 50, hour(10)),
                        new Posting(ROT, -50, hour(10)),
                        new Posting(ALIVE_IN_A, -50, hour(30)),
                        new Posting(DIFFERENCE, 50, hour(30)));
    }

    @Test
    void reversingACountBringsBackWhatTheBooksHeldWithoutIt() {
        OneBatch batch = OneBatch.ofTenTrays()
                .write(10, new What.Count(900))
                .write(20, rot(50))
                .write(40, new What.Reversal(entry(2), "a tray was left out"));

        assertThat(batch.now().alivePlants()).isEqualTo(930);
        assertThat(batch.now().lost()).isEqualTo(Map.of(Cause.ROT, 50));
        assertThat(batch.now().fullCount()).isNull();
        assertThat(batch.now().lossesSince()).containsExactly(new BatchState.PlantsAt(hour(20), 50));
    }

    @Test
    void aLateMoveCarriesWhatWasAliveThenAndWhatDiedSince() {
        OneBatch batch = OneBatch.ofTenTrays().write(20, rot(80)).write(10, new What.Move("B"));

        assertThat(batch.now().placements())
                .isEqualTo(List.of(new Placement("A", hour(0)), new Placement("B", hour(10))));
        assertThat(batch.now().balances()).isEqualTo(Map.of(Account.SUPPLIER, -980L, ALIVE_IN_B, 900L, ROT, 80L));
        assertThat(batch.postingsOf(3))
                .containsExactlyInAnyOrder(
                        new Posting(ALIVE_IN_A, -980, hour(10)),
                        new Posting(ALIVE_IN_B, 980, hour(10)),
                        new Posting(ALIVE_IN_A, 80, hour(20)),
                        new Posting(ALIVE_IN_B, -80, hour(20)));
    }

    @Test
    void aShipmentFromBeforeACountExplainsPlantsToo() {
        OneBatch batch = OneBatch.ofTenTrays()
                .write(10, new What.StageReached(Stage.ROOT))
                .write(30, new What.Count(700))
                .write(20, new What.Ship(3, 270, null));

        assertThat(batch.now().alivePlants()).isEqualTo(700);
        assertThat(batch.now().shippedPlants()).isEqualTo(270);
        assertThat(batch.now().lost()).isEqualTo(Map.of(Cause.COUNT_DIFFERENCE, 10));
    }

    @Test
    void factsOfOneInstantHappenedInTheOrderTheyWereRecordedHoweverTheyAreListed() {
        OneBatch countLast = OneBatch.ofTenTrays().write(10, rot(50)).write(10, new What.Count(900));
        OneBatch lossLast = OneBatch.ofTenTrays().write(10, new What.Count(900)).write(10, rot(50));

        assertThat(countLast.now().alivePlants()).isEqualTo(900);
        assertThat(lossLast.now().alivePlants()).isEqualTo(850);
        for (OneBatch batch : List.of(countLast, lossLast)) {
            List<Entry> entries = batch.entries();
            List<Entry> backwards = List.of(entries.get(2), entries.get(1), entries.get(0));
            assertThat(BatchFold.of(batch.batch(), backwards).state()).isEqualTo(batch.now());
        }
    }

    @Test
    void aReversedEntryCountsAsNeverMadeAlsoBeforeItWasReversed() {
        OneBatch batch = OneBatch.ofTenTrays().write(10, rot(50)).write(40, new What.Reversal(entry(2), "a slip"));

        assertThat(batch.at(20).alivePlants()).isEqualTo(980);
        assertThat(batch.now().lost()).isEmpty();
        assertThat(batch.postingsOf(3))
                .containsExactlyInAnyOrder(new Posting(ALIVE_IN_A, 50, hour(10)), new Posting(ROT, -50, hour(10)));
    }

    @Test
    void asOfAnInstantWhatHappenedAtItIsIncluded() {
        OneBatch batch = OneBatch.ofTenTrays().write(10, rot(50));
        BatchFold books = batch.books();

        assertThat(books.stateAt(hour(0).minusNanos(1))).isEmpty();
        assertThat(books.stateAt(hour(10).minusNanos(1)).orElseThrow().alivePlants())
                .isEqualTo(980);
        assertThat(books.stateAt(hour(10)).orElseThrow().alivePlants()).isEqualTo(930);
    }

    @Test
    void whatIsRecordedLateIsAddedAndNothingThatStoodThereIsChanged() {
        OneBatch batch = OneBatch.ofTenTrays().write(30, new What.Count(900));
        List<Entry> entries = batch.entries();
        List<Posting> posted = batch.postingsOf(2);

        batch.write(10, rot(50)).write(40, new What.Reversal(entry(2), "a tray was left out"));

        assertThat(batch.entries().subList(0, 2)).isEqualTo(entries);
        assertThat(batch.postingsOf(2)).isEqualTo(posted);
        assertThat(batch.entries()).extracting(Entry::id).containsExactly(entry(1), entry(2), entry(3), entry(4));
    }

    private static What rot(int plants) {
        return new What.Loss(plants, Cause.ROT);
    }
}
