package rootcast.app.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.UUID;
import java.util.stream.Collectors;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.climate.HourlySeries;
import rootcast.crop.CropRecipe;
import rootcast.ledger.BatchState;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.DateRange;
import rootcast.rounds.BatchCare;
import rootcast.rounds.Care;
import rootcast.rounds.HouseCare;
import rootcast.rounds.Rhythm;
import rootcast.rounds.RoundItem;
import rootcast.rounds.Rounds;
import rootcast.rounds.Task;
import rootcast.site.Site;
import rootcast.warnings.HouseHours;
import rootcast.warnings.Warning;
import rootcast.warnings.Watch;
import rootcast.warnings.Watched;

/** What the rules of rounds and warnings make of the demo when it starts. */
class DemoRoundsTest {

    private static final long SPAN_HOURS = 21 * 24;
    private static final DateRange UNKNOWN =
            new DateRange(DateDistribution.NEVER, DateDistribution.NEVER, DateDistribution.NEVER);

    private final DemoScenario scenario = DemoSeed.scenario();

    /**
     * Each line of seed/demo/rounds.csv is one thing to find, and few things come by chance (a count that fell due at a
     * weekend). Three sites together have some forty batches: more than one overdue check to three of them, or one warning
     * to five, would be a wall again; fewer than three kinds would show nothing. Held for the dark season alone: in April
     * three things are overdue, and in July there are 17 warnings, for the simulated house has neither fog nor cooling.
     */
    @ParameterizedTest(name = "starting at {0}")
    @ValueSource(
            strings = {"2026-11-25T15:00:00Z", "2026-11-28T13:00:00Z", "2026-11-30T14:00:00Z", "2027-02-02T04:00:00Z"})
    void aFewThingsAreOverdueAndWarnedOf(String start) {
        Instant now = Instant.parse(start);
        Demo demo = new Demo(scenario, scenario.tell(now), now);

        Map<Task, Long> overdue = demo.items().stream()
                .filter(item -> item.state() == RoundItem.State.CARRIED_OVER)
                .collect(Collectors.groupingBy(RoundItem::task, TreeMap::new, Collectors.counting()));
        List<Warning> lasting = demo.warnings();

        assertThat(overdue.values().stream().mapToLong(Long::longValue).sum())
                .as("%s", overdue)
                .isBetween(4L, 12L);
        assertThat(overdue)
                .allSatisfy((task, count) -> assertThat(count).as("%s", task).isLessThanOrEqualTo(3));
        assertThat(lasting).hasSizeBetween(4, 8);
        assertThat(lasting.stream().map(Warning::kind).distinct()).hasSizeGreaterThanOrEqualTo(4);
        assertThat(lasting.stream()
                        .map(Warning::house)
                        .collect(Collectors.groupingBy(house -> house, Collectors.counting()))
                        .values())
                .allMatch(count -> count <= 2);
    }

    @Test
    void everyKindOfCareThatTheRoundsAskForWasDone() {
        Set<Task> done = DemoSeed.toldInNovember().cares().stream()
                .filter(care -> care.skippedFor() == null)
                .map(DemoCare::task)
                .collect(Collectors.toCollection(() -> EnumSet.noneOf(Task.class)));

        assertThat(EnumSet.complementOf(EnumSet.copyOf(done)))
                .containsExactlyInAnyOrder(Task.LOOK_CALLUS, Task.LOOK_ROOT, Task.READY, Task.MOVE);
    }

    /** A quarter of the batches is never carried to a toning house: their growers said so on the round that asked. */
    @Test
    void batchesThatStayAreNotAskedForAgain() {
        DemoScenario.Told told = DemoSeed.toldInNovember();

        assertThat(told.cares())
                .filteredOn(care -> care.task() == Task.MOVE)
                .hasSizeGreaterThan(10)
                .allSatisfy(care -> assertThat(care.skippedFor()).isNotBlank());
        assertThat(new Demo(scenario, told, DemoSeed.WEDNESDAY_IN_NOVEMBER).items())
                .filteredOn(item -> item.task() == Task.MOVE && item.state() == RoundItem.State.CARRIED_OVER)
                .extracting(RoundItem::batch)
                .doesNotContainAnyElementsOf(scenario.staying());
    }

    /** What a check asks for is there: a count is an entry of its batch, a box came somehow, moisture has its level. */
    @Test
    void whatWasFoundIsWrittenDown() {
        DemoScenario.Told told = DemoSeed.toldInNovember();
        Map<UUID, DemoEntry> entries = told.entries().stream().collect(Collectors.toMap(DemoEntry::id, entry -> entry));

        assertThat(told.cares()).allSatisfy(care -> {
            DemoCare.Found found = care.found();
            assertThat(found.level() != null).isEqualTo(care.task() == Task.MOISTURE_CHECK);
            assertThat(found.ecMsPerCm() != null).isEqualTo(care.task() == Task.EC_CHECK);
            assertThat(found.arrival() != null).isEqualTo(care.task() == Task.ARRIVAL_CHECK);
            assertThat(found.gnats() != null).isEqualTo(care.task() == Task.SCOUTING);
            assertThat(found.count() != null).isEqualTo(care.task() == Task.COUNT);
            if (found.count() != null) {
                assertThat(entries.get(found.count()).batch()).isEqualTo(care.batch());
            }
        });
    }

    @Test
    void theRoundOfItsFirstDayIsLeftToWhoeverLooksIn() {
        Instant now = DemoSeed.WEDNESDAY_IN_NOVEMBER;
        DemoScenario.Told told = DemoSeed.toldInNovember();

        assertThat(told.cares())
                .isNotEmpty()
                .allMatch(care -> scenario.setup()
                        .site(care.site())
                        .site()
                        .dayOf(care.at())
                        .isBefore(scenario.setup().site(care.site()).site().dayOf(now)));
        assertThat(new Demo(scenario, told, now).items())
                .filteredOn(item -> item.state() == RoundItem.State.DUE)
                .hasSizeGreaterThan(10);
    }

    /** The demo in memory, put to the rules of the core. */
    private static final class Demo {
        private final DemoScenario scenario;
        private final DemoScenario.Told told;
        private final Instant now;
        private final List<BatchState> states;
        private final List<Care> cares;

        Demo(DemoScenario scenario, DemoScenario.Told told, Instant now) {
            this.scenario = scenario;
            this.told = told;
            this.now = now;
            LedgerInMemory ledger = new LedgerInMemory(true);
            DemoLoad.play(scenario, told, ledger);
            states = ledger.folds().values().stream().map(fold -> fold.state()).toList();
            cares = told.cares().stream()
                    .map(care -> new Care(
                            care.task().wireName() + "."
                                    + (care.batch() == null ? care.house() : care.batch())
                                    + (care.occurrence().isEmpty() ? "" : "." + care.occurrence()),
                            care.task(),
                            care.house(),
                            care.batch(),
                            care.dueOn(),
                            care.skippedFor() == null,
                            care.at(),
                            care.found().level(),
                            care.found().ecMsPerCm()))
                    .toList();
        }

        List<RoundItem> items() {
            return scenario.setup().houses().stream()
                    .flatMap(house -> {
                        Site site = scenario.setup().site(house.site()).site();
                        List<BatchCare> present = states.stream()
                                .filter(BatchState::isLive)
                                .filter(state -> state.house().equals(house.code()))
                                .map(state -> new BatchCare(
                                        state,
                                        recipeOf(state),
                                        new BatchCare.Expected(UNKNOWN, UNKNOWN, UNKNOWN),
                                        null,
                                        house.next(now)
                                                .flatMap(next -> next.adviceFor(state, Map.of()))
                                                .orElse(null)))
                                .toList();
                        HouseCare care = new HouseCare(house.code(), present, cares, List.of(), false, false);
                        return Rounds.of(site, care, Rhythm.USUAL, site.dayOf(now), now).stream();
                    })
                    .toList();
        }

        List<Warning> warnings() {
            long until = HourlySeries.hourOf(now);
            return scenario.setup().houses().stream()
                    .flatMap(house -> {
                        Watched watched = new Watched(
                                scenario.setup().site(house.site()).site(),
                                house.code(),
                                hoursOf(house.code()),
                                states.stream()
                                        .filter(BatchState::isLive)
                                        .filter(state -> state.placements().stream()
                                                .anyMatch(place -> place.house().equals(house.code())))
                                        .map(state -> new Watched.Resident(state, recipeOf(state)))
                                        .toList(),
                                cares,
                                List.of());
                        return Watch.over(watched, Rhythm.USUAL, until - SPAN_HOURS, until, now).stream();
                    })
                    .filter(warning -> warning.until() == null)
                    .toList();
        }

        private HouseHours hoursOf(String house) {
            Map<String, Map<Long, Double>> values = told.readings().stream()
                    .filter(reading -> reading.house().equals(house))
                    .collect(Collectors.groupingBy(
                            DemoReading::quantity,
                            Collectors.toMap(
                                    reading -> HourlySeries.hourOf(reading.at()), DemoReading::value, (a, b) -> b)));
            return (measured, hour) ->
                    values.getOrDefault(measured.wireName(), Map.of()).getOrDefault(hour, Double.NaN);
        }

        private CropRecipe recipeOf(BatchState state) {
            return scenario.recipes()
                    .get(scenario.setup().variety(state.batch().variety()).crop());
        }
    }
}
