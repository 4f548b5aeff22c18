package rootcast.rounds;

import static org.assertj.core.api.Assertions.assertThat;
import static rootcast.rounds.OneHouse.STUCK;
import static rootcast.rounds.OneHouse.STUCK_ON;
import static rootcast.rounds.OneHouse.day;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Nested;
import org.junit.jupiter.api.Test;
import rootcast.crop.Stage;
import rootcast.ledger.Sample;
import rootcast.ledger.What;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.DateRange;
import rootcast.rounds.OneHouse.Story;
import rootcast.saying.Saying;

/** Due days are counted by hand from the common practice of {@link Rhythm} and the recipe (CP, no source). */
class RoundsTest {

    private static Story fresh() {
        return Story.of("B1", STUCK);
    }

    private static Story callused() {
        return fresh().reached(Stage.CALLUS, day(6));
    }

    private static Story rooted() {
        return callused().reached(Stage.ROOT, day(14));
    }

    /** A list that moves when a check is closed or taken back brings another one under the thumb. */
    @Test
    void aClosedCheckKeepsItsPlaceAmongTheOthers() {
        OneHouse house = new OneHouse().with(Story.of("B2", STUCK)).with(fresh());
        List<String> before = ids(house);
        assertThat(before).contains("look-callus.B1.1", "look-callus.B2.1");

        house.closed(house.item(7, Task.SCOUTING), true, day(7));
        RoundItem look = house.round(7).stream()
                .filter(item -> item.id().equals("look-callus.B1.1"))
                .findFirst()
                .orElseThrow();
        house.closed(look, false, day(7));

        assertThat(ids(house)).isEqualTo(before);
    }

    private static List<String> ids(OneHouse house) {
        return house.round(7).stream().map(RoundItem::id).toList();
    }

    @Nested
    class Looks {

        @Test
        void firstLookForCallusIsDueOnTheDayOfTheEarlyDate() {
            OneHouse house = new OneHouse().with(fresh());

            assertThat(house.asks(4, Task.LOOK_CALLUS)).isFalse();
            RoundItem look = house.item(5, Task.LOOK_CALLUS);
            assertThat(look.dueOn()).isEqualTo(STUCK_ON.plusDays(5));
            assertThat(look.state()).isEqualTo(RoundItem.State.DUE);
            assertThat(look.id()).isEqualTo("look-callus.B1.1");
        }

        @Test
        void aLookThatFoundTooFewIsRepeatedTwoDaysLaterUnderAnotherId() {
            OneHouse house = new OneHouse().with(fresh().write(day(5), new What.Look(Stage.CALLUS, 40, 12)));

            assertThat(house.asks(6, Task.LOOK_CALLUS)).isFalse();
            assertThat(house.item(7, Task.LOOK_CALLUS).id()).isEqualTo("look-callus.B1.2");
        }

        @Test
        void aSkippedLookIsAskedForAgainTwoDaysLater() {
            OneHouse house = new OneHouse().with(fresh());
            house.closed(house.item(5, Task.LOOK_CALLUS), false, day(5));

            assertThat(house.item(5, Task.LOOK_CALLUS).state()).isEqualTo(RoundItem.State.SKIPPED);
            assertThat(house.asks(6, Task.LOOK_CALLUS)).isFalse();
            assertThat(house.item(7, Task.LOOK_CALLUS).state()).isEqualTo(RoundItem.State.DUE);
        }

        @Test
        void rootsAreLookedForOnceCallusWasSeenAndReadyOnceRootsWere() {
            assertThat(new OneHouse().with(fresh()).asks(15, Task.LOOK_ROOT)).isFalse();
            assertThat(new OneHouse().with(callused()).asks(11, Task.LOOK_ROOT)).isFalse();
            assertThat(new OneHouse().with(callused()).item(12, Task.LOOK_ROOT).dueOn())
                    .isEqualTo(STUCK_ON.plusDays(12));
            assertThat(new OneHouse().with(callused()).asks(25, Task.READY)).isFalse();
            assertThat(new OneHouse().with(rooted()).item(20, Task.READY).dueOn())
                    .isEqualTo(STUCK_ON.plusDays(20));
        }

        @Test
        void nothingIsLookedForThatNeverComes() {
            BatchCare batch = fresh().care();
            DateRange never = new DateRange(DateDistribution.NEVER, DateDistribution.NEVER, DateDistribution.NEVER);
            BatchCare cold = new BatchCare(
                    batch.state(), batch.recipe(), new BatchCare.Expected(never, never, never), null, null);

            assertThat(new OneHouse().with(cold).asks(30, Task.LOOK_CALLUS)).isFalse();
        }
    }

    @Nested
    class Mist {

        @Test
        void isWeanedWhenTheFullRegimeIsOver() {
            OneHouse house = new OneHouse().with(fresh());

            assertThat(house.asks(3, Task.WEAN_MIST)).isFalse();
            assertThat(house.item(4, Task.WEAN_MIST).dueOn()).isEqualTo(STUCK_ON.plusDays(4));
        }

        @Test
        void goesOffAtNightFromTheDayCallusWasSeen() {
            RoundItem item = new OneHouse().with(callused()).item(6, Task.NIGHT_MIST_OFF);

            assertThat(item.dueOn()).isEqualTo(STUCK_ON.plusDays(6));
            assertThat(new OneHouse().with(callused()).asks(6, Task.WEAN_MIST)).isFalse();
        }

        @Test
        void staysOnTheListUntilItIsDone() {
            OneHouse house = new OneHouse().with(callused());
            RoundItem late = house.item(9, Task.NIGHT_MIST_OFF);
            assertThat(late.state()).isEqualTo(RoundItem.State.CARRIED_OVER);
            assertThat(late.dueOn()).isEqualTo(STUCK_ON.plusDays(6));

            house.closed(late, true, day(9));

            assertThat(house.item(9, Task.NIGHT_MIST_OFF).state()).isEqualTo(RoundItem.State.DONE);
            assertThat(house.asks(10, Task.NIGHT_MIST_OFF)).isFalse();
        }

        @Test
        void isOffOnceRooted() {
            assertThat(new OneHouse().with(rooted()).item(14, Task.MIST_OFF).dueOn())
                    .isEqualTo(STUCK_ON.plusDays(14));
        }
    }

    @Test
    void feedStepsUpAtCallusAndAgainAtRoots() {
        assertThat(new OneHouse().with(fresh()).asks(5, Task.FEED_STEP)).isFalse();
        RoundItem callus = new OneHouse().with(callused()).item(6, Task.FEED_STEP);
        RoundItem roots = new OneHouse().with(rooted()).item(14, Task.FEED_STEP);

        assertThat(callus.why().english()).contains("75 to 100 ppm");
        assertThat(roots.why().english()).contains("75 to 150 ppm");
        assertThat(callus.id()).isNotEqualTo(roots.id());
    }

    @Test
    void moistureIsCheckedDailyWithoutRootsAndEveryOtherDayFromCallusOn() {
        OneHouse without = new OneHouse().with(fresh());
        without.closed(without.item(1, Task.MOISTURE_CHECK), true, day(1));
        OneHouse with = new OneHouse().with(callused());
        with.closed(with.item(7, Task.MOISTURE_CHECK), true, day(7));

        assertThat(without.item(2, Task.MOISTURE_CHECK).dueOn()).isEqualTo(STUCK_ON.plusDays(2));
        assertThat(with.asks(8, Task.MOISTURE_CHECK)).isFalse();
        assertThat(with.asks(9, Task.MOISTURE_CHECK)).isTrue();
        assertThat(with.dryAir().item(8, Task.MOISTURE_CHECK).why().english()).contains("dry");
    }

    @Test
    void scoutingIsOfTheHouseTheDayAfterTheFirstBatchAndThenWeekly() {
        OneHouse house = new OneHouse().with(fresh()).with(Story.of("B2", day(3)));
        RoundItem first = house.item(1, Task.SCOUTING);
        assertThat(first.batch()).isNull();
        assertThat(first.dueOn()).isEqualTo(STUCK_ON.plusDays(1));

        house.closed(first, true, day(2));

        assertThat(house.asks(8, Task.SCOUTING)).isFalse();
        assertThat(house.item(9, Task.SCOUTING).dueOn()).isEqualTo(STUCK_ON.plusDays(9));
    }

    @Nested
    class Prevention {

        @Test
        void isDueFromTheFirstDayAndNoLongerAskedForInTheThirdWeek() {
            OneHouse house = new OneHouse().with(fresh());

            assertThat(house.item(1, Task.PREVENTION).why().english()).contains("2026-03-09", "label");
            assertThat(house.asks(14, Task.PREVENTION)).isTrue();
            assertThat(house.asks(15, Task.PREVENTION)).isFalse();
        }

        @Test
        void isSettledByATreatmentOfTheHouseSinceSticking() {
            assertThat(new OneHouse().with(fresh()).with(treated(day(2), 4)).asks(3, Task.PREVENTION))
                    .isFalse();
            assertThat(new OneHouse().with(fresh()).with(treated(day(-1), 4)).asks(3, Task.PREVENTION))
                    .isTrue();
        }
    }

    @Test
    void countsAreDueAWeekAfterStickingThenFortnightlyAndWhenReady() {
        Sample sample = new Sample(2, 100, 3);
        assertThat(new OneHouse().with(fresh()).item(7, Task.COUNT).dueOn()).isEqualTo(STUCK_ON.plusDays(7));
        Story counted = rooted().write(day(8), new What.Count(990)).write(day(18), new What.SampledCount(sample));
        assertThat(new OneHouse().with(counted).asks(31, Task.COUNT)).isFalse();
        assertThat(new OneHouse().with(counted).item(32, Task.COUNT).dueOn()).isEqualTo(STUCK_ON.plusDays(32));
        counted.reached(Stage.READY, day(22));
        assertThat(new OneHouse().with(counted).item(22, Task.COUNT).dueOn()).isEqualTo(STUCK_ON.plusDays(22));
        counted.write(day(22.5), new What.Count(980));
        assertThat(new OneHouse().with(counted).asks(35, Task.COUNT)).isFalse();
    }

    @Test
    void aBatchInTheWrongHouseIsToMoveWithTheReason() {
        Saying clash = Saying.of(Why.CLASHES, List.of("mist"), List.of("H2"));
        BatchCare batch = fresh().care(new BatchCare.MoveAdvice(day(3), clash, List.of("H2")));

        RoundItem move = new OneHouse().with(batch).item(4, Task.MOVE);

        assertThat(move.why()).isEqualTo(clash);
        assertThat(move.dueOn()).isEqualTo(STUCK_ON.plusDays(3));
        assertThat(new OneHouse().with(fresh()).asks(4, Task.MOVE)).isFalse();
    }

    @Test
    void toningBeginsAWeekAfterRoots() {
        OneHouse house = new OneHouse().with(rooted());

        assertThat(house.asks(20, Task.TONE)).isFalse();
        assertThat(house.item(21, Task.TONE).dueOn()).isEqualTo(STUCK_ON.plusDays(21));
    }

    @Nested
    class InTheFirstDays {

        @Test
        void theBoxIsCheckedAndAWettingAgentGoesOverTheLeavesOnTheDayOfSticking() {
            OneHouse house = new OneHouse().with(fresh());

            assertThat(house.item(0, Task.ARRIVAL_CHECK).dueOn()).isEqualTo(STUCK_ON);
            assertThat(house.item(0, Task.WETTING_AGENT).why().english()).contains("label");
            assertThat(house.item(1, Task.WETTING_AGENT).state()).isEqualTo(RoundItem.State.CARRIED_OVER);
            assertThat(house.asks(2, Task.ARRIVAL_CHECK)).as("past mending").isFalse();
            assertThat(house.asks(2, Task.WETTING_AGENT)).isFalse();
        }

        @Test
        void draughtIsLookedForEverySecondDayWhileCuttingsAreFresh() {
            OneHouse house = new OneHouse().with(fresh());

            RoundItem first = house.item(0, Task.DRAUGHT_LOOK);
            assertThat(first.batch()).as("of the whole house").isNull();
            house.closed(first, true, day(0.1));
            assertThat(house.asks(1, Task.DRAUGHT_LOOK)).isFalse();
            assertThat(house.item(2, Task.DRAUGHT_LOOK).dueOn()).isEqualTo(STUCK_ON.plusDays(2));
            assertThat(new OneHouse().with(rooted()).asks(20, Task.DRAUGHT_LOOK))
                    .as("roots are there")
                    .isFalse();
        }
    }

    @Test
    void saltsOfTheMediumAreAskedForWeeklyOnceRootsAreThereAndNothingMeasuresThem() {
        OneHouse house = new OneHouse().with(rooted());

        assertThat(new OneHouse().with(fresh()).asks(3, Task.EC_CHECK)).isFalse();
        RoundItem first = house.item(14, Task.EC_CHECK);
        assertThat(first.dueOn()).as("the day roots were there").isEqualTo(STUCK_ON.plusDays(14));
        house.closed(first, true, day(14.2));
        assertThat(house.asks(20, Task.EC_CHECK)).isFalse();
        assertThat(house.item(21, Task.EC_CHECK).dueOn()).isEqualTo(STUCK_ON.plusDays(21));
        assertThat(new OneHouse().with(rooted()).ecMeasured().asks(20, Task.EC_CHECK))
                .as("a probe says it")
                .isFalse();
    }

    @Nested
    class AfterATreatment {

        @Test
        void everyItemIsBlockedUntilTheHouseMayBeEntered() {
            OneHouse house = new OneHouse().with(fresh()).with(treated(day(5), 12));

            List<RoundItem> inside = house.round(5, day(5.25));
            assertThat(inside).isNotEmpty().allSatisfy(item -> {
                assertThat(item.state()).isEqualTo(RoundItem.State.BLOCKED);
                assertThat(item.blockedBy().reentryAt()).isEqualTo(day(5.5));
            });
            assertThat(house.round(5, day(5.5)))
                    .isNotEmpty()
                    .noneMatch(item -> item.state() == RoundItem.State.BLOCKED);
            assertThat(house.round(5, day(4.99))).noneMatch(item -> item.state() == RoundItem.State.BLOCKED);
        }

        @Test
        void theLongestIntervalCounts() {
            List<Treatment> both = List.of(treated(day(5), 48), treated(day(6), 4));

            assertThat(Treatment.closing(both, OneHouse.HOUSE, day(6.1)))
                    .map(Treatment::reentryAt)
                    .contains(day(7));
            assertThat(Treatment.closing(both, "H2", day(6.1))).isEmpty();
        }

        @Test
        void noIntervalClosesNothing() {
            assertThat(Treatment.closing(List.of(treated(day(5), 0)), OneHouse.HOUSE, day(5)))
                    .isEmpty();
        }
    }

    /** The property that screens and resends rely on: ids do not repeat, and asking twice gives the same. */
    @Test
    void idsAreUniqueAndTheSameEveryTime() {
        for (int day = 0; day < 40; day++) {
            OneHouse house = new OneHouse()
                    .with(rooted())
                    .with(Story.of("B2", day(4)).reached(Stage.CALLUS, day(11)))
                    .with(Story.of("B3", day(9)));
            List<RoundItem> once = house.round(day);

            Set<String> ids = once.stream().map(RoundItem::id).collect(Collectors.toCollection(TreeSet::new));
            assertThat(ids).hasSameSizeAs(once);
            assertThat(house.round(day)).isEqualTo(once);
        }
    }

    @Test
    void daysAreThoseOfTheSite() {
        // 23:30 UTC on 6 March is already 7 March where the site is, one hour ahead.
        Story late = fresh().reached(Stage.CALLUS, Instant.parse("2026-03-06T23:30:00Z"));

        assertThat(new OneHouse().with(late).item(5, Task.NIGHT_MIST_OFF).dueOn())
                .isEqualTo(STUCK_ON.plusDays(5));
    }

    private static Treatment treated(Instant at, int hours) {
        return new Treatment(
                new UUID(1, hours),
                OneHouse.HOUSE,
                null,
                Treatment.Purpose.PREVENTION,
                "Guard 50",
                at,
                Duration.ofHours(hours));
    }
}
