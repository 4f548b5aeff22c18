package rootcast.rounds;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static rootcast.rounds.OneHouse.SITE;
import static rootcast.rounds.OneHouse.STUCK;
import static rootcast.rounds.OneHouse.STUCK_ON;
import static rootcast.rounds.OneHouse.day;

import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import rootcast.crop.Stage;
import rootcast.ledger.What;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.DateRange;
import rootcast.rounds.OneHouse.Story;
import rootcast.saying.Saying;

/** Whose records a rule goes by, and what it says; days are counted by hand (CP, no source). */
class RoundDetailsTest {

    private static Story fresh() {
        return Story.of("B1", STUCK);
    }

    private static Story callused() {
        return fresh().reached(Stage.CALLUS, day(6));
    }

    private static Care care(Task task, @Nullable String batch, String house, boolean done, Instant at) {
        return new Care(task.wireName() + "." + batch + "." + at, task, house, batch, SITE.dayOf(at), done, at, null);
    }

    private static List<RoundItem> round(int day, List<Care> cares, BatchCare... batches) {
        return Rounds.of(
                SITE,
                new HouseCare(OneHouse.HOUSE, List.of(batches), cares, List.of(), false, false),
                Rhythm.USUAL,
                STUCK_ON.plusDays(day),
                day(day));
    }

    private static List<String> ids(List<RoundItem> items, Task task) {
        return items.stream()
                .filter(item -> item.task() == task)
                .map(RoundItem::id)
                .toList();
    }

    @Test
    void looksForCallusAreNoLooksForRoots() {
        Story looked =
                fresh().write(day(5), new What.Look(Stage.CALLUS, 40, 12)).reached(Stage.CALLUS, day(6));

        RoundItem look = new OneHouse().with(looked).item(12, Task.LOOK_ROOT);

        assertThat(look.id()).isEqualTo("look-root.B1.1");
        assertThat(look.why()).isEqualTo(Saying.of(Why.ONE_IN_TEN_BY_NOW, "ROOT"));
    }

    @Test
    void aLookThatFoundTooFewSaysHowOftenItWasLookedFor() {
        Story looked = fresh().write(day(5), new What.Look(Stage.CALLUS, 40, 12))
                .write(day(7), new What.Look(Stage.CALLUS, 40, 20));

        assertThat(new OneHouse().with(looked).item(9, Task.LOOK_CALLUS).why())
                .isEqualTo(Saying.of(Why.LOOKED_AND_NOT_YET, 2, "CALLUS"));
    }

    @Test
    void aLookSkippedOnAnotherBatchOrDoneIsNoTry() {
        List<Care> cares = List.of(
                care(Task.LOOK_CALLUS, "B2", OneHouse.HOUSE, false, day(5)),
                care(Task.LOOK_CALLUS, "B1", OneHouse.HOUSE, true, day(5)));

        assertThat(ids(round(6, cares, fresh().care()), Task.LOOK_CALLUS)).containsExactly("look-callus.B1.1");
    }

    @Test
    void whatWasLookedForIsLookedForAgainThoughTheOutlookSaysNever() {
        BatchCare seen =
                fresh().write(day(5), new What.Look(Stage.CALLUS, 40, 12)).care();
        DateRange never = new DateRange(DateDistribution.NEVER, DateDistribution.NEVER, DateDistribution.NEVER);
        BatchCare cold =
                new BatchCare(seen.state(), seen.recipe(), new BatchCare.Expected(never, never, never), null, null);

        assertThat(ids(round(7, List.of(), cold), Task.LOOK_CALLUS)).containsExactly("look-callus.B1.2");
    }

    @Test
    void aMoistureCheckOfAnotherBatchOrOfAnotherKindIsNotThisOnes() {
        List<Care> cares = List.of(
                care(Task.MOISTURE_CHECK, "B2", OneHouse.HOUSE, true, day(3)),
                care(Task.COUNT, "B1", OneHouse.HOUSE, true, day(3)));

        assertThat(round(3, cares, fresh().care()))
                .filteredOn(item -> item.task() == Task.MOISTURE_CHECK && item.state() != RoundItem.State.DONE)
                .extracting(RoundItem::dueOn)
                .containsExactly(STUCK_ON.plusDays(1));
    }

    @Test
    void reasonsAreWordsThatAGrowerCanCheck() {
        Story counted = callused().write(day(8), new What.Count(990));
        OneHouse house = new OneHouse().with(counted);

        assertThat(house.item(6, Task.NIGHT_MIST_OFF).why()).isEqualTo(Saying.of(Why.WENT_INTO_PHASE, "ROOTING"));
        assertThat(house.item(6, Task.FEED_STEP).why())
                .isEqualTo(Saying.of(Why.RECIPE_NITROGEN, 75.0, 100.0, "ROOTING"));
        assertThat(house.item(22, Task.COUNT).why()).isEqualTo(Saying.of(Why.LAST_COUNTED, LocalDate.of(2026, 3, 10)));
        assertThat(new OneHouse().with(fresh()).item(7, Task.COUNT).why()).isEqualTo(Saying.of(Why.NOT_COUNTED));
        assertThat(house.item(6, Task.MOISTURE_CHECK).why()).isEqualTo(Saying.of(Why.RECIPE_MOISTURE, 3.0, 4.0));
        assertThat(house.dryAir().item(6, Task.MOISTURE_CHECK).why())
                .isEqualTo(Saying.of(Why.RECIPE_MOISTURE_DRY_AIR, 3.0, 4.0));
    }

    @Test
    void aCountWrittenOnTheRoundPutsTheNextOff() {
        List<Care> cares = List.of(care(Task.COUNT, "B1", OneHouse.HOUSE, true, day(9)));

        assertThat(ids(round(22, cares, callused().care()), Task.COUNT)).isEmpty();
        assertThat(ids(round(23, cares, callused().care()), Task.COUNT)).containsExactly("count.B1.2026-03-25");
    }

    @Test
    void aReadyBatchIsCountedThatDayUnlessItIsDueBefore() {
        Story ready = callused()
                .reached(Stage.ROOT, day(14))
                .write(day(8), new What.Count(990))
                .reached(Stage.READY, day(25));

        assertThat(new OneHouse().with(ready).item(25, Task.COUNT).dueOn()).isEqualTo(STUCK_ON.plusDays(22));
    }

    @Test
    void preventionIsThatOfTheBatchInTheHouseItStoodInThen() {
        Story moved = Story.of("B1", STUCK, "H2").write(day(3), new What.Move(OneHouse.HOUSE));

        assertThat(new OneHouse().with(moved).with(treated("H2", null, day(2))).asks(4, Task.PREVENTION))
                .isFalse();
        assertThat(new OneHouse()
                        .with(moved)
                        .with(treated(OneHouse.HOUSE, null, day(2)))
                        .asks(4, Task.PREVENTION))
                .isTrue();
        assertThat(new OneHouse()
                        .with(moved)
                        .with(treated(OneHouse.HOUSE, "B2", day(3.5)))
                        .asks(4, Task.PREVENTION))
                .isTrue();
        assertThat(new OneHouse()
                        .with(moved)
                        .with(treated("H3", "B1", day(3.5)))
                        .asks(4, Task.PREVENTION))
                .isFalse();
        Treatment control = new Treatment(
                new UUID(1, 1), OneHouse.HOUSE, "B1", Treatment.Purpose.CONTROL, "Guard 50", day(3.5), Duration.ZERO);
        assertThat(new OneHouse().with(moved).with(control).asks(4, Task.PREVENTION))
                .isTrue();
    }

    @Test
    void aTreatmentAtTheMomentOfStickingCounts() {
        assertThat(new OneHouse()
                        .with(fresh())
                        .with(treated(OneHouse.HOUSE, null, STUCK))
                        .asks(2, Task.PREVENTION))
                .isFalse();
    }

    private static Treatment treated(String house, @Nullable String batch, Instant at) {
        return new Treatment(new UUID(1, 0), house, batch, Treatment.Purpose.PREVENTION, "Guard 50", at, Duration.ZERO);
    }

    @Test
    void reentryIsNeverBeforeTheTreatment() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> new Treatment(
                        new UUID(1, 2), "H1", null, Treatment.Purpose.OTHER, "Guard 50", STUCK, Duration.ofSeconds(-1)))
                .withMessageContaining("negative");
    }

    @Test
    void scoutingGoesByTheHouseAndByWhoCameInLast() {
        BatchCare early = fresh().care();
        List<Care> otherHouse = List.of(care(Task.SCOUTING, null, "H2", true, day(5)));
        List<Care> beforeItCame = List.of(care(Task.SCOUTING, null, OneHouse.HOUSE, true, day(-3)));
        List<Care> otherTask = List.of(care(Task.TONE, null, OneHouse.HOUSE, true, day(5)));

        for (List<Care> cares : List.of(otherHouse, beforeItCame, otherTask)) {
            assertThat(ids(round(6, cares, early), Task.SCOUTING)).contains("scouting.H1.2026-03-03");
        }
        assertThat(round(6, List.of())).isEmpty();
        RoundItem scouting = round(1, List.of(), early).stream()
                .filter(item -> item.task() == Task.SCOUTING)
                .findFirst()
                .orElseThrow();
        assertThat(scouting.why()).isEqualTo(Saying.of(Why.READ_THE_TRAPS));
    }

    @Test
    void scoutingOfABatchThatWasCarriedInCountsFromThen() {
        BatchCare carried = Story.of("B1", STUCK, "H2")
                .write(day(5), new What.Move(OneHouse.HOUSE))
                .care();

        assertThat(ids(round(5, List.of(), carried), Task.SCOUTING)).isEmpty();
        assertThat(ids(round(6, List.of(), carried), Task.SCOUTING)).containsExactly("scouting.H1.2026-03-08");
    }

    /** The oldest batch first, those of one moment by name; what was closed stands where it stood. */
    @Test
    void theWalkIsInOneOrder() {
        List<Care> cares = List.of(
                care(Task.COUNT, "B3", OneHouse.HOUSE, true, day(1.02)),
                care(Task.TONE, "B2", OneHouse.HOUSE, true, day(1.01)),
                care(Task.MIST_OFF, "B9", "H2", true, day(1.01)),
                care(Task.READY, "B2", OneHouse.HOUSE, true, day(0.2)));
        List<RoundItem> items = round(
                1,
                cares,
                Story.of("B3", day(-1)).care(),
                Story.of("B2", STUCK).care(),
                Story.of("B1", STUCK).care());

        assertThat(items.stream().map(RoundItem::batch).distinct().toList()).containsExactly(null, "B3", "B1", "B2");
        assertThat(items.stream().filter(item -> item.state() == RoundItem.State.DONE))
                .extracting(RoundItem::task)
                .containsExactly(Task.COUNT, Task.TONE);
        assertThat(items.get(items.size() - 1).task()).isEqualTo(Task.TONE);
    }

    @Test
    void whatWasClosedKeepsItsDayItsTaskAndItsBatch() {
        Care skipped = new Care(
                "count.B1.2026-03-09", Task.COUNT, OneHouse.HOUSE, "B1", STUCK_ON.plusDays(7), false, day(9), null);

        RoundItem item = round(9, List.of(skipped)).get(0);

        assertThat(item)
                .isEqualTo(new RoundItem(
                        "count.B1.2026-03-09",
                        OneHouse.HOUSE,
                        "B1",
                        Task.COUNT,
                        STUCK_ON.plusDays(7),
                        RoundItem.State.SKIPPED,
                        null,
                        List.of(),
                        null));
    }

    @Test
    void tasksAndStatesGoByTheirWordsOutside() {
        assertThat(Task.ofWireName("night-mist-off")).contains(Task.NIGHT_MIST_OFF);
        assertThat(Task.ofWireName("NIGHT_MIST_OFF")).isEmpty();
        assertThat(Task.SCOUTING.asks()).containsExactly("fungusGnats", "shoreFlies");
        assertThat(Task.WEAN_MIST.asks()).isEmpty();
        assertThat(RoundItem.State.CARRIED_OVER.wireName()).isEqualTo("carried-over");
    }
}
