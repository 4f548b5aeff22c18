package rootcast.app.board;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.function.IntToDoubleFunction;
import org.junit.jupiter.api.Test;
import rootcast.app.availability.CellSnapshot;
import rootcast.app.crop.CatalogueSnapshot;
import rootcast.app.site.SitesSnapshot;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.availability.SupplyLot;
import rootcast.availability.TrayOdds;
import rootcast.crop.Crop;
import rootcast.crop.Variety;
import rootcast.site.ShipWeek;
import rootcast.site.Site;

class BoardMadeReadyTest {

    private static final LocalDate TODAY = LocalDate.parse("2026-03-02");
    private static final Cell CELL = new Cell("mint", "T100", "north");

    /** Ten trays, from today for two weeks, for certain; it counts how often it is asked. */
    private static final class TenTrays implements TrayOdds {

        private final AtomicInteger asked = new AtomicInteger();

        @Override
        public Days daysWith(double probability) {
            return new Days(TODAY, TODAY.plusDays(13));
        }

        @Override
        public int mostWith(double probability) {
            return 10;
        }

        @Override
        public IntToDoubleFunction on(LocalDate day) {
            asked.incrementAndGet();
            return trays -> trays <= 10 ? 1 : 0;
        }
    }

    @Test
    void whoOpensTheUsualBoardFindsItComputed() {
        TenTrays trays = new TenTrays();
        RowsSnapshot rows =
                rowsOf(new SupplyLot("B1", date -> 1, trays, crop -> (world, days) -> new int[days.size()]));
        BoardView usual = BoardView.usual(ShipWeek.of(TODAY));

        rows.computeAhead(usual);
        int askedAhead = trays.asked.get();
        List<ShownRow> shown = rows.rows(usual);

        assertThat(askedAhead).isPositive();
        assertThat(trays.asked).hasValue(askedAhead);
        assertThat(shown)
                .singleElement()
                .satisfies(row ->
                        assertThat(row.row().cells()).extracting("open").containsExactly(10, 10, 0, 0, 0, 0, 0, 0));
    }

    private static RowsSnapshot rowsOf(SupplyLot lot) {
        CellSnapshot cell =
                new CellSnapshot(CELL, List.of(), List.of(), new CellSupply(List.of(lot), List.of(), TODAY));
        return RowsSnapshot.NONE.with(
                Map.of(CELL, cell),
                SitesSnapshot.of(List.of(new Site("north", "North", ZoneOffset.UTC, DayOfWeek.MONDAY))),
                CatalogueSnapshot.of(
                        List.of(new Variety("mint", "mint", "Mentha spicata")),
                        List.of(new Crop("mint", "Mint", null))));
    }
}
