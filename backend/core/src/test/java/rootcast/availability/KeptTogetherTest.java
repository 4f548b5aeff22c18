package rootcast.availability;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import rootcast.outlook.World;

/** Chances by hand, of lots that come out in each world as a table says. */
class KeptTogetherTest {

    private static final LocalDate MONDAY = LocalDate.parse("2026-03-02");
    private static final LocalDate THURSDAY = MONDAY.plusDays(3);

    /** Three trays in nine worlds of ten, five in six of ten, on every day of a week. */
    private static final SupplyLot LOT = lot("A", (world, day) -> world < 600 ? 5 : world < 900 ? 3 : 0);

    private interface Trays {
        int on(int world, LocalDate day);
    }

    private static SupplyLot lot(String batch, Trays trays) {
        TrayOdds odds = new TrayOdds() {
            @Override
            public Days daysWith(double probability) {
                return new Days(MONDAY, MONDAY.plusDays(6));
            }

            @Override
            public int mostWith(double probability) {
                return 0;
            }

            @Override
            public java.util.function.IntToDoubleFunction on(LocalDate day) {
                return number -> 0;
            }
        };
        return new SupplyLot(
                batch,
                date -> 1,
                odds,
                crop -> (World world, List<LocalDate> days) -> days.stream()
                        .mapToInt(day -> trays.on(world.number(), day))
                        .toArray());
    }

    private static Promise promise(int line, LocalDate day, int trays) {
        return new Promise("order", line, day, trays, 0.9, line);
    }

    private static KeptTogether kept(List<SupplyLot> lots, Promise... promises) {
        return KeptTogether.of(new CellSupply(lots, List.of(promises), MONDAY), "mint");
    }

    @Test
    void aPromiseIsKeptInTheWorldsThatHaveItsTrays() {
        Promise three = promise(1, MONDAY, 3);
        Promise four = promise(1, MONDAY, 4);

        assertThat(kept(List.of(LOT), three).chance(three)).isEqualTo(0.9);
        assertThat(kept(List.of(LOT), four).chance(four)).isEqualTo(0.6);
    }

    @Test
    void theOlderPromiseIsServedFirst() {
        Promise older = promise(1, THURSDAY, 3);
        Promise newer = promise(2, MONDAY, 2);
        KeptTogether kept = kept(List.of(LOT), newer, older);

        assertThat(kept.chance(older)).isEqualTo(0.9);
        assertThat(kept.chance(newer)).isEqualTo(0.6);
        assertThat(kept.chanceOfAll(List.of(older, newer))).isEqualTo(0.6);
    }

    /** In every tenth world the one fails, in every tenth, another or the same, the other does. */
    @Test
    void togetherTheyAreKeptMoreOftenIfTheyFailTogether() {
        SupplyLot one = lot("A", (world, day) -> world % 10 == 0 ? 0 : 2);
        SupplyLot alike = lot("B", (world, day) -> world % 10 == 0 ? 0 : 2);
        SupplyLot apart = lot("B", (world, day) -> world / 10 % 10 == 0 ? 0 : 2);
        Promise all = promise(1, MONDAY, 4);

        assertThat(kept(List.of(one, alike), all).chance(all)).isEqualTo(0.9);
        assertThat(kept(List.of(one, apart), all).chance(all)).isCloseTo(0.81, within(1e-9));
    }

    /** Two trays on Monday that are past on Thursday, two from Thursday on. */
    @Test
    void aTrayServesOnTheDaysOnWhichItIsThere() {
        SupplyLot early = lot("A", (world, day) -> day.isBefore(THURSDAY) ? 2 : 0);
        SupplyLot late = lot("B", (world, day) -> day.isBefore(THURSDAY) ? 0 : 2);
        Promise monday = promise(1, MONDAY, 2);
        Promise thursday = promise(2, THURSDAY, 3);
        KeptTogether kept = kept(List.of(early, late), monday, thursday);

        assertThat(kept.chance(monday)).isEqualTo(1);
        assertThat(kept.chance(thursday)).isZero();
    }

    /** Four trays, then one, then four: whoever counts on three that are lost on Tuesday cannot have them again. */
    @Test
    void traysThatWereLostDoNotComeBack() {
        LocalDate tuesday = MONDAY.plusDays(1);
        SupplyLot lot = lot("A", (world, day) -> day.equals(tuesday) ? 1 : 4);
        Promise onTuesday = promise(1, tuesday, 1);
        Promise onThursday = promise(2, THURSDAY, 4);
        KeptTogether kept = kept(List.of(lot), promise(3, MONDAY, 1), onTuesday, onThursday);

        assertThat(kept.chance(onTuesday)).isEqualTo(1);
        assertThat(kept.chance(onThursday)).isZero();
    }

    @Test
    void withoutAPromiseThereIsNoChance() {
        assertThat(kept(List.of(LOT)).chanceOfAll(List.of())).isNull();
    }
}
