package rootcast.app.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.Test;
import rootcast.crop.Stage;
import rootcast.ledger.What;
import rootcast.rounds.Task;

class DemoLoadTest {

    private final DemoScenario scenario = DemoSeed.scenario();
    private final DemoScenario.Told told = DemoSeed.toldInNovember();

    @Test
    void everythingToldIsPlayed() {
        LedgerInMemory ledger = new LedgerInMemory(true);

        DemoLoad.Played played = DemoLoad.play(scenario, told, ledger);

        assertThat(ledger.setup).hasSize(3 + 12 + 4 + 15 + 25);
        assertThat(ledger.readings).isEqualTo(told.readings());
        assertThat(ledger.entries).containsExactlyInAnyOrderElementsOf(told.entries());
        assertThat(ledger.orders).isEqualTo(told.orders());
        assertThat(played.refusedOrders()).isEmpty();
    }

    @Test
    void shipmentsForARefusedOrderLeaveWithoutIt() {
        LedgerInMemory ledger = new LedgerInMemory(false);

        DemoLoad.Played played = DemoLoad.play(scenario, told, ledger);

        assertThat(played.refusedOrders()).isEqualTo(told.orders());
        assertThat(ledger.refusals).isEmpty();
        assertThat(shipments(ledger.entries))
                .hasSameSizeAs(shipments(told.entries()))
                .allMatch(ship -> ship.orderLine() == null);
    }

    @Test
    void roundsWereWalkedBeforeItStartsAndAFewThingsForgotten() {
        LedgerInMemory ledger = new LedgerInMemory(true);

        DemoLoad.play(scenario, told, ledger);

        Instant startAt = told.readings().get(told.readings().size() - 1).at();
        assertThat(ledger.cares).hasSizeGreaterThan(told.batches().size()).allSatisfy(care -> {
            assertThat(care.at()).isBefore(startAt);
            assertThat(care.dueOn()).isBeforeOrEqualTo(LocalDate.ofInstant(care.at(), ZoneOffset.UTC));
        });
        List<String> callused = told.entries().stream()
                .filter(entry -> entry.what().equals(new What.StageReached(Stage.CALLUS)))
                .map(DemoEntry::batch)
                .toList();
        List<String> weaned = ledger.cares.stream()
                .filter(care -> care.task() == Task.NIGHT_MIST_OFF)
                .map(DemoCare::batch)
                .toList();
        assertThat(callused).containsAll(weaned);
        assertThat(weaned.size()).isBetween(callused.size() * 3 / 4, callused.size() - 1);
    }

    private static List<What.Ship> shipments(List<DemoEntry> entries) {
        return entries.stream()
                .map(DemoEntry::what)
                .filter(What.Ship.class::isInstance)
                .map(What.Ship.class::cast)
                .toList();
    }
}
