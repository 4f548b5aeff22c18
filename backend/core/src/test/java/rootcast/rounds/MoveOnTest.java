package rootcast.rounds;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.rounds.OneHouse.STUCK;
import static rootcast.rounds.OneHouse.STUCK_ON;
import static rootcast.rounds.OneHouse.day;

import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rootcast.crop.Stage;
import rootcast.ledger.What;
import rootcast.outlook.UsualMove;
import rootcast.rounds.OneHouse.Story;
import rootcast.saying.Saying;

/** Batches of H1 go on to H2 once rooted; that was stated on day 1. */
class MoveOnTest {

    private static final MoveOn TO_H2 = new MoveOn(new UsualMove(Stage.ROOT, "H2"), day(1));

    private static Story callused() {
        return Story.of("B1", STUCK).reached(Stage.CALLUS, day(6));
    }

    private static Story rooted() {
        return callused().reached(Stage.ROOT, day(14));
    }

    private static OneHouse houseOf(Story story) {
        return new OneHouse().with(story.care(TO_H2, Map.of()));
    }

    @Test
    void aRootedBatchThatStillStandsThereIsAskedForWithItsNextHouse() {
        RoundItem move = houseOf(rooted()).item(15, Task.MOVE);

        assertThat(move.why()).isEqualTo(Saying.of(Why.USUAL_MOVE, "H2", "ROOT"));
        assertThat(move.to()).containsExactly("H2");
        assertThat(move.dueOn()).isEqualTo(STUCK_ON.plusDays(14));
        assertThat(move.state()).isEqualTo(RoundItem.State.CARRIED_OVER);
    }

    @Test
    void itIsLeftInPeaceBeforeAndOnceItIsReady() {
        assertThat(houseOf(callused()).asks(15, Task.MOVE)).isFalse();
        assertThat(houseOf(rooted().reached(Stage.READY, day(15))).asks(16, Task.MOVE))
                .as("it waits for its ship day")
                .isFalse();
    }

    @Test
    void aBatchSeenRootedWithoutCallusHasCallusedToo() {
        Story straight = Story.of("B1", STUCK).reached(Stage.ROOT, day(13));
        MoveOn callused = new MoveOn(new UsualMove(Stage.CALLUS, "H2"), day(1));

        assertThat(new OneHouse()
                        .with(straight.care(callused, Map.of()))
                        .item(15, Task.MOVE)
                        .dueOn())
                .isEqualTo(STUCK_ON.plusDays(13));
    }

    @Test
    void nothingIsOverdueBeforeItWasStated() {
        MoveOn later = new MoveOn(new UsualMove(Stage.ROOT, "H2"), day(18));

        RoundItem move = new OneHouse().with(rooted().care(later, Map.of())).item(18, Task.MOVE);

        assertThat(move.dueOn()).isEqualTo(STUCK_ON.plusDays(18));
        assertThat(move.state()).isEqualTo(RoundItem.State.DUE);
    }

    @Test
    void nothingIsDueWhileTheNextHouseIsClosed() {
        Treatment closing = new Treatment(
                new UUID(2, 1), "H2", null, Treatment.Purpose.CONTROL, "Guard 50", day(15), Duration.ofHours(24));

        OneHouse closed =
                new OneHouse().with(rooted().care(TO_H2, Treatment.closedHouses(List.of(closing), day(15.5))));
        OneHouse opened = new OneHouse().with(rooted().care(TO_H2, Treatment.closedHouses(List.of(closing), day(16))));

        assertThat(closed.asks(15, Task.MOVE)).isFalse();
        assertThat(opened.asks(16, Task.MOVE)).isTrue();
    }

    @Test
    void aBatchThatWasThereBeforeIsNotSentBack() {
        Story back = rooted().write(day(15), new What.Move("H2")).write(day(16), new What.Move(OneHouse.HOUSE));

        assertThat(houseOf(back).asks(17, Task.MOVE)).isFalse();
    }

    @Test
    void onceSkippedItStaysAndAClashMayStillAskForIt() {
        BatchCare.MoveAdvice clash = new BatchCare.MoveAdvice(
                day(15), Saying.of(Why.CLASHES, List.of("mist"), List.of("H3")), List.of("H3"));
        BatchCare usual = rooted().care(TO_H2, Map.of());
        BatchCare both = new BatchCare(usual.state(), usual.recipe(), usual.expected(), clash, usual.usual());
        OneHouse house = new OneHouse().with(both);

        RoundItem first = house.item(15, Task.MOVE);
        assertThat(first.to()).containsExactly("H2");
        house.closed(first, false, day(15));

        assertThat(house.item(16, Task.MOVE).to()).containsExactly("H3");
    }
}
