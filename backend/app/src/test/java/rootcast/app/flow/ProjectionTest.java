package rootcast.app.flow;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.junit.jupiter.api.Test;
import rootcast.app.availability.Order;
import rootcast.app.crop.CatalogueSnapshot;
import rootcast.app.site.HousePlans;
import rootcast.app.site.SitesSnapshot;
import rootcast.availability.Cell;
import rootcast.availability.WantedLine;
import rootcast.crop.Crop;
import rootcast.crop.Variety;
import rootcast.facts.FactPosition;
import rootcast.site.Site;

class ProjectionTest {

    private static final Instant NOW = Instant.parse("2026-03-02T10:00:00Z");
    private static final Site NORTH = site("north", "Etc/UTC");
    private static final Site SOUTH = site("south", "Europe/Madrid");
    private static final Cell CELL = new Cell("mint", "T100", "north");
    private static final Order ORDER = new Order(
            UUID.fromString("00000000-0000-4000-8000-000000000001"),
            1,
            "Garden centre by the mill",
            null,
            0.9,
            NOW,
            "sales",
            new FactPosition(1),
            List.of(new WantedLine(1, CELL, LocalDate.parse("2026-03-09"), 4)),
            null,
            null);

    @Test
    void aNewSiteTouchesNoCellOfAnother() {
        Projection projection = new Projection();
        projection.begin(hours -> facts(1, setup("Mentha spicata", NORTH), ORDER));

        assertThat(touched(projection, facts(2, setup("Mentha spicata", NORTH, SOUTH))))
                .isEmpty();
        assertThat(touched(projection, Facts.none(new FactPosition(2), NOW))).isEmpty();
    }

    @Test
    void aSiteWithAnotherClockOrAnotherShipDayTouchesItsCells() {
        Projection projection = new Projection();
        projection.begin(hours -> facts(1, setup("Mentha spicata", NORTH), ORDER));

        Site elsewhere = site("north", "Europe/Madrid");
        assertThat(touched(projection, facts(2, setup("Mentha spicata", elsewhere))))
                .containsExactly(CELL);
        Site thursdays = new Site("north", "north", elsewhere.zone(), DayOfWeek.THURSDAY);
        assertThat(touched(projection, facts(3, setup("Mentha spicata", thursdays))))
                .containsExactly(CELL);
        assertThat(touched(projection, facts(4, setup("Mentha spicata", thursdays))))
                .isEmpty();
    }

    @Test
    void aVarietyWithAnotherNameTouchesItsCells() {
        Projection projection = new Projection();
        projection.begin(hours -> facts(1, setup("Mentha spicata", NORTH), ORDER));

        assertThat(touched(projection, facts(2, setup("Mentha × piperita", NORTH))))
                .containsExactly(CELL);
    }

    @Test
    void aDayThatPassesTouchesEveryCell() {
        Projection projection = new Projection();
        projection.begin(hours -> facts(1, setup("Mentha spicata", NORTH), ORDER));

        assertThat(touched(projection, Facts.none(new FactPosition(1), NOW.plusSeconds(86_400))))
                .containsExactly(CELL);
    }

    private static Site site(String code, String zone) {
        return new Site(code, code, ZoneId.of(zone), DayOfWeek.MONDAY);
    }

    private static Set<Cell> touched(Projection projection, Facts facts) {
        return projection.next(facts).changes().cells();
    }

    private static Facts facts(long position, Facts.Setup setup, Order... orders) {
        return new Facts(new FactPosition(position), NOW, setup, List.of(), List.of(orders), List.of(), Map.of());
    }

    private static Facts.Setup setup(String name, Site... sites) {
        return new Facts.Setup(
                SitesSnapshot.of(List.of(sites)),
                CatalogueSnapshot.of(
                        List.of(new Variety("mint", "mint", name)), List.of(new Crop("mint", "Mint", null))),
                List.of(),
                HousePlans.NONE);
    }
}
