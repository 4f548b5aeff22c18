package rootcast.app.demo;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;
import rootcast.ledger.What;

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
        assertThat(ledger.cares).isEqualTo(told.cares());
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

    private static List<What.Ship> shipments(List<DemoEntry> entries) {
        return entries.stream()
                .map(DemoEntry::what)
                .filter(What.Ship.class::isInstance)
                .map(What.Ship.class::cast)
                .toList();
    }
}
