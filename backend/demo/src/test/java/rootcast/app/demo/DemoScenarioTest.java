package rootcast.app.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variety;
import rootcast.ledger.BatchState;
import rootcast.ledger.Cause;
import rootcast.ledger.What;

class DemoScenarioTest {

    private final DemoScenario scenario = DemoSeed.scenario();

    @Test
    void theBusinessHasTheSizeTheDemoPromises() {
        DemoSetup setup = scenario.setup();
        DemoScenario.Told told = DemoSeed.toldInNovember();

        assertThat(setup.sites()).hasSize(3);
        assertThat(setup.sites().stream().map(DemoSetup.Place::timeZone).distinct())
                .hasSize(2);
        assertThat(setup.houses()).hasSize(12);
        assertThat(setup.trayFormats()).hasSize(4);
        assertThat(scenario.crops()).hasSize(15);
        assertThat(setup.varieties()).hasSize(25);
        assertThat(setup.varieties().stream().map(Variety::crop).distinct()).hasSize(15);
        assertThat(told.batches()).hasSize(150);
        assertThat(told.batches().stream().map(DemoBatch::variety).distinct()).hasSize(25);
        assertThat(told.batches().stream().map(DemoBatch::house).distinct()).hasSizeGreaterThan(6);
        assertThat(told.batches().stream().map(DemoBatch::trayFormat).distinct())
                .hasSize(4);
        assertThat(told.orders().stream().mapToInt(order -> order.lines().size()))
                .satisfies(lines -> assertThat(
                                lines.stream().mapToInt(Integer::intValue).sum())
                        .isEqualTo(60));
    }

    @Test
    void everyNameIsThereOnce() {
        DemoSetup setup = scenario.setup();

        assertThat(setup.sites().stream().map(DemoSetup.Place::code)).doesNotHaveDuplicates();
        assertThat(setup.houses().stream().map(DemoSetup.Building::code)).doesNotHaveDuplicates();
        assertThat(setup.houses().stream().map(DemoSetup.Building::name)).doesNotHaveDuplicates();
        assertThat(setup.trayFormats().stream().map(TrayFormat::code)).doesNotHaveDuplicates();
        assertThat(setup.varieties().stream().map(Variety::code)).doesNotHaveDuplicates();
        assertThat(setup.varieties().stream().map(Variety::name)).doesNotHaveDuplicates();
        assertThat(codes()).allMatch(code -> code.matches("[A-Za-z0-9][A-Za-z0-9._-]{0,31}"));
    }

    /** ICNCP: genus and, where given, species, then the cultivar in single quotes with capitals. */
    @Test
    void cultivarsAreWrittenAsTheCodeOfCultivatedPlantsWants() {
        assertThat(scenario.setup().varieties())
                .extracting(Variety::name)
                .allMatch(name -> name.matches("[A-Z][a-z]+( ×?[a-z]+)? '[A-Z][a-z]+( [A-Z][a-z]+)*'"));
    }

    /** Every weekday, both clock changes, summer, new year and a leap day. */
    @ParameterizedTest(name = "starting at {0}")
    @ValueSource(
            strings = {
                "2026-11-23T05:30:00Z",
                "2026-11-24T12:00:00Z",
                "2026-11-25T15:00:00Z",
                "2026-11-26T19:59:59Z",
                "2026-11-27T23:10:00Z",
                "2026-11-28T13:00:00Z",
                "2026-11-29T02:00:00Z",
                "2026-11-01T06:30:00Z",
                "2027-03-14T07:15:00Z",
                "2027-07-21T18:00:00Z",
                "2027-01-01T04:59:00Z",
                "2028-02-29T16:00:00Z"
            })
    void theLedgersOwnRulesAcceptEveryEntryAtTheTimeItWasRecorded(String start) {
        Instant now = Instant.parse(start);
        DemoScenario.Told told = scenario.tell(now);
        LedgerInMemory ledger = new LedgerInMemory(true);

        DemoLoad.play(scenario, told, ledger);

        assertThat(ledger.refusals).isEmpty();
        assertThat(told.batches()).allMatch(batch -> !batch.recordedAt().isAfter(now));
        assertThat(told.entries()).allSatisfy(entry -> {
            assertThat(entry.recordedAt()).isAfter(entry.happenedAt()).isBeforeOrEqualTo(now);
            assertThat(Duration.between(entry.happenedAt(), entry.recordedAt())).isLessThan(Duration.ofDays(21));
        });
        assertThat(told.entries().stream().map(DemoEntry::id)).doesNotHaveDuplicates();
        assertThat(told.entries().stream().map(DemoEntry::recordedAt)).isSorted();
    }

    @Test
    void noPlantIsMadeOrForgotten() {
        LedgerInMemory ledger = new LedgerInMemory(true);
        DemoLoad.play(scenario, DemoSeed.toldInNovember(), ledger);

        ledger.folds().forEach((batch, fold) -> {
            BatchState end = fold.state();
            assertThat(end.alivePlants() + end.lostPlants() + end.shippedPlants())
                    .as(batch)
                    .isEqualTo(end.stuckPlants());
        });
    }

    @Test
    void lossesAreModestBarTheBatchesWithTrouble() {
        LedgerInMemory ledger = new LedgerInMemory(true);
        DemoLoad.play(scenario, DemoSeed.toldInNovember(), ledger);

        List<Double> lostShares = ledger.folds().values().stream()
                .map(fold -> fold.state())
                .map(end -> (double) (end.lostPlants() - end.lost().getOrDefault(Cause.OTHER, 0)) / end.stuckPlants())
                .toList();
        assertThat(lostShares.stream().filter(share -> share < 0.13).count()).isGreaterThan(125);
        assertThat(lostShares.stream().filter(share -> share > 0.13)).hasSizeBetween(8, 25);
        assertThat(lostShares).allMatch(share -> share < 0.4);
    }

    @Test
    void batchesStandInEveryStageWithLinersReadyToday() {
        LedgerInMemory ledger = new LedgerInMemory(true);
        DemoLoad.play(scenario, DemoSeed.toldInNovember(), ledger);

        Map<Stage, Long> batches = ledger.folds().values().stream()
                .collect(Collectors.groupingBy(fold -> fold.state().stage(), Collectors.counting()));
        assertThat(batches).containsOnlyKeys(Stage.values());
        assertThat(batches.values()).allMatch(count -> count >= 8);
    }

    @Test
    void everyKindOfEntryIsTold() {
        List<DemoEntry> entries = DemoSeed.toldInNovember().entries();

        assertThat(entries.stream()
                        .map(entry -> entry.what().getClass().getSimpleName())
                        .distinct())
                .containsExactlyInAnyOrder(
                        "Loss", "Count", "SampledCount", "Look", "StageReached", "Move", "Ship", "Reversal");
        assertThat(entries).anyMatch(entry -> "from paper".equals(entry.note()));
        assertThat(entries.stream().filter(entry -> entry.what() instanceof What.Ship ship && ship.orderLine() != null))
                .hasSize(5);
    }

    @Test
    void peopleOfASiteWorkInItsDaylightAndNotAtWeekends() {
        DemoScenario.Told told = DemoSeed.toldInNovember();
        Map<String, ZoneId> zones = new HashMap<>();
        told.batches()
                .forEach(batch -> zones.put(
                        batch.key(), scenario.setup().site(batch.site()).timeZone()));

        Stream<Map.Entry<String, Instant>> moments = Stream.concat(
                told.batches().stream().map(batch -> Map.entry(batch.key(), batch.stuckAt())),
                told.entries().stream().map(entry -> Map.entry(entry.batch(), entry.happenedAt())));
        assertThat(moments).allSatisfy(moment -> {
            var local = moment.getValue().atZone(zones.get(moment.getKey()));
            assertThat(WorkingHours.isWorkday(local.toLocalDate())).isTrue();
            assertThat(local.toLocalTime()).isBetween(LocalTime.of(7, 0), LocalTime.of(17, 30));
        });
    }

    @Test
    void batchesMoveOnlyToHousesOfTheirOwnSite() {
        DemoScenario.Told told = DemoSeed.toldInNovember();
        Map<String, String> sites = told.batches().stream().collect(Collectors.toMap(DemoBatch::key, DemoBatch::site));

        assertThat(told.entries().stream().filter(entry -> entry.what() instanceof What.Move))
                .hasSizeGreaterThan(50)
                .allSatisfy(entry -> assertThat(scenario.setup()
                                .house(((What.Move) entry.what()).house())
                                .site())
                        .isEqualTo(sites.get(entry.batch())));
    }

    @Test
    void orderLinesSpreadFromLastWeekToSixWeeksAhead() {
        LocalDate today = LocalDate.ofInstant(DemoSeed.WEDNESDAY_IN_NOVEMBER, ZoneId.of("America/New_York"));

        List<Long> days = DemoSeed.toldInNovember().orders().stream()
                .flatMap(order -> order.lines().stream())
                .map(line -> ChronoUnit.DAYS.between(today, line.shipOn()))
                .toList();

        assertThat(days).allMatch(day -> day >= -7 && day <= 45);
        assertThat(days.stream().filter(day -> day < 0)).hasSize(5);
        assertThat(days.stream().filter(day -> day > 28).count()).isGreaterThan(5);
    }

    /** Two sites ship on Mondays and one on Tuesdays; the start may be any day of the week. */
    @ParameterizedTest(name = "starting at {0}")
    @ValueSource(
            strings = {
                "2026-11-23T15:00:00Z",
                "2026-11-24T15:00:00Z",
                "2026-11-25T15:00:00Z",
                "2026-11-28T15:00:00Z",
                "2026-11-29T15:00:00Z"
            })
    void everyOrderLineShipsOnItsSitesShipDay(String start) {
        Map<String, DayOfWeek> shipDays =
                Map.of("TARROW", DayOfWeek.MONDAY, "PELLAN", DayOfWeek.MONDAY, "DUNMAR", DayOfWeek.TUESDAY);
        DemoScenario.Told told = scenario.tell(Instant.parse(start));

        assertThat(told.orders().stream().flatMap(order -> order.lines().stream()))
                .hasSize(60)
                .allMatch(line -> line.shipOn().getDayOfWeek() == shipDays.get(line.site()));
        assertThat(told.entries().stream()
                        .filter(entry -> entry.what() instanceof What.Ship ship && ship.orderLine() != null))
                .hasSize(5);
    }

    @Test
    void theSameStartTellsTheSameStory() {
        DemoScenario.Told once = DemoSeed.toldInNovember();
        DemoScenario.Told again = DemoSeed.scenario().tell(DemoSeed.WEDNESDAY_IN_NOVEMBER);

        assertThat(again.batches()).isEqualTo(once.batches());
        assertThat(again.entries()).isEqualTo(once.entries());
        assertThat(again.orders()).isEqualTo(once.orders());
        assertThat(again.cares()).isEqualTo(once.cares());
        assertThat(again.readings()).isEqualTo(once.readings());
    }

    private Stream<String> codes() {
        DemoSetup setup = scenario.setup();
        return Stream.of(
                        setup.sites().stream().map(DemoSetup.Place::code),
                        setup.houses().stream().map(DemoSetup.Building::code),
                        setup.trayFormats().stream().map(TrayFormat::code),
                        setup.crops().stream(),
                        setup.varieties().stream().map(Variety::code))
                .flatMap(codes -> codes);
    }
}
