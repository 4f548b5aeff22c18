package rootcast.scenario;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.availability.LotOfBatch;
import rootcast.availability.MatchRules;
import rootcast.availability.NotEnoughOpen;
import rootcast.availability.Placing;
import rootcast.availability.Promise;
import rootcast.availability.Shortfall;
import rootcast.availability.SupplyLot;
import rootcast.availability.WantedLine;
import rootcast.board.BoardCell;
import rootcast.board.BoardModel;
import rootcast.board.RowHead;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.RateFactors;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variation;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchState;
import rootcast.ledger.Cause;
import rootcast.ledger.EntryRules.Decision;
import rootcast.ledger.InMemoryLedger;
import rootcast.ledger.What;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchHistory.Plants;
import rootcast.outlook.DateRange;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.Outlook;
import rootcast.outlook.OutlookModel;
import rootcast.outlook.SaleableTrays;
import rootcast.site.ShipWeek;
import rootcast.site.Site;

/**
 * The whole story, from a stuck tray to a number that sales can promise, in memory. Expected dates are closed forms;
 * expected trays follow from means and standard deviations given beside them, far from the next whole tray.
 */
class CountToBoardScenarioTest {

    private static final Site NORTH = new Site("north", "North", ZoneId.of("America/New_York"), DayOfWeek.MONDAY);
    private static final TrayFormat T105 = new TrayFormat("T105", 105, 100, 540, 280);
    private static final Cell CELL = new Cell("lav-blue", "T105", "north");

    /** Friday 2 January 2026, 06:00 at the site. */
    private static final Instant STUCK = Instant.parse("2026-01-02T11:00:00Z");

    /** Somebody comes round every hour or so: a stage is entered when it is complete. */
    private static final double HOUR_DAYS = 0.05;

    /** 7, 9 and 10 days at 22 °C, half as fast at 13.5 °C: (13.5 − 5) / (22 − 5). A ready liner holds for 14 days. */
    private static final CropProfile CROP = new CropProfile(
            List.of(stage(Stage.STICK, 7, 0.97), stage(Stage.CALLUS, 9, 0.96), stage(Stage.ROOT, 10, 0.98)),
            0.04,
            14,
            CropProfile.USUAL_CELL_SPREAD,
            RateFactors.NONE,
            new Variation(HOUR_DAYS, 0.26, 0.3, 0, 0, 0.9));

    private final InMemoryLedger ledger = new InMemoryLedger();
    private final Batch batch = new Batch("B1", "north", "lav-blue", T105, STUCK);
    private final HourlySeries medium = new HourlySeries();
    private final List<Promise> promises = new ArrayList<>();

    @Test
    void fromAStuckTrayToANumberThatSalesCanPromise() {
        // Friday: forty trays are stuck in house A. The heating fails for two days.
        happened(0, new What.Stick("A", 40, 4_200));
        readings(0, 2, 13.5);
        assertThat(days(outlook(2).readyAt().p50())).as("26 days at half speed").isCloseTo(52, within(1e-6));

        // Then it holds 22 °C: after nine days, eight days' worth of development.
        readings(2, 9, 22);
        assertThat(days(outlook(9).callusedAt().p50())).isCloseTo(8, within(1e-6));
        assertThat(days(outlook(9).readyAt().p50())).isCloseTo(27, within(1e-6));

        // Callus is seen on day 8 and every plant counted: 200 are missing.
        happened(8, new What.StageReached(Stage.CALLUS));
        happened(8, new What.Count(4_000));
        assertThat(ledger.state(batch).lost()).isEqualTo(Map.of(Cause.COUNT_DIFFERENCE, 200));

        // The batch runs at its crop's rate, as callus showed, or was callused a little before somebody saw it. Batches
        // drawn in R
        // (stuck-to-board.R in the resources) have callus and root ready 1.10 days early, 0.065 early and 0.86 late at
        // 10, 50 and 90 %.
        // The house has strayed, so the mean of the 18 days to come may be 0.69 °C off (docs/models/temperature.md),
        // 0.059 in
        // ln(rate) each: about a day later or 0.9 sooner, added in squares.
        DateRange ready = outlook(9).readyAt();
        assertThat(days(ready.p10())).isCloseTo(25.564, within(0.05));
        assertThat(days(ready.p50())).isCloseTo(26.935, within(0.03));
        assertThat(days(ready.p90())).isCloseTo(28.297, within(0.03));

        // 4000 · 0.96 · 0.98 = 3763 plants should live, give or take 21: 37 trays of 100, three deviations sure.
        SaleableTrays trays = outlook(9).saleableTrays();
        assertThat(List.of(trays.p10(), trays.p50(), trays.p90())).containsExactly(37, 37, 37);

        // Nine cells in ten are ready on 29 January; each may be held for 14 days from when it is itself. On the Monday
        // of week 5 few
        // are, on that of week 7 the first are past their day again. The same draws give, on Mondays: week 5 5 trays
        // with 0.530 and 6
        // with 0.485; week 6 37 with 0.97 and 38 with 0.03; week 7 17 with 0.907 and 18 with 0.890, 31 with 0.542 and
        // 32 with 0.499.
        assertThat(board(9))
                .containsExactly(
                        week("2026-W05", 0, 0, 0, 5, 0),
                        week("2026-W06", 37, 0, 37, 37, 0),
                        week("2026-W07", 17, 0, 17, 31, 0),
                        week("2026-W08", 0, 0, 0, 0, 0));

        // Twenty trays are promised for Wednesday of week 6. The 17 of the batch that end before week 7 serve it, but
        // on
        // Wednesday and the Monday after there are 37 in all, so 17 are left for either Monday.
        Promise promise = placed("o1", "2026-02-04", 20);
        assertThat(board(9))
                .containsExactly(
                        week("2026-W05", 0, 0, 0, 5, 0),
                        week("2026-W06", 37, 20, 17, 17, 0),
                        week("2026-W07", 17, 0, 17, 17, 0),
                        week("2026-W08", 0, 0, 0, 0, 0));

        // Eighteen more cannot be had in week 7, nor at any other date.
        WantedLine tooMany = new WantedLine(1, CELL, LocalDate.parse("2026-02-09"), 18);
        assertThat(MatchRules.place(List.of(tooMany), 0.9, cell -> supply(9)))
                .isEqualTo(new Placing.Refused(List.of(new NotEnoughOpen(tooMany, 17, null, null))));

        // Day 10: Botrytis takes half. 1950 · 0.96^(7/9) · 0.98 = 1851 ± 12 plants will live: 18 trays, 2 too few. The
        // same draws with
        // these plants have 8 trays with 0.917 and 9 with 0.885 in week 7.
        readings(9, 10, 22);
        happened(10, new What.Loss(2_050, Cause.BOTRYTIS));
        assertThat(board(10))
                .containsExactly(
                        week("2026-W05", 0, 0, 0, 0, 0),
                        week("2026-W06", 18, 20, 0, 0, 2),
                        week("2026-W07", 8, 0, 0, 0, 0),
                        week("2026-W08", 0, 0, 0, 0, 0));
        assertThat(Shortfall.of(supply(10))).containsExactly(new Shortfall(promise, 2));
    }

    private void happened(double day, What what) {
        assertThat(ledger.record(batch, at(day), what, at(20))).isInstanceOf(Decision.Accepted.class);
    }

    private void readings(int fromDay, int untilDay, double celsius) {
        for (Instant at = at(fromDay); at.isBefore(at(untilDay)); at = at.plus(Duration.ofMinutes(30))) {
            medium.add(at, celsius);
        }
    }

    private Outlook outlook(int asOfDay) {
        var houses = new HouseCurves(at(asOfDay));
        houses.house("A", medium, SetpointPlan.none());
        return OutlookModel.outlook(history(ledger.state(batch)), CROP, T105, houses);
    }

    private static BatchHistory history(BatchState state) {
        Plants base = state.fullCount() == null
                ? new Plants(state.batch().stuckAt(), state.stuckPlants())
                : new Plants(state.fullCount().at(), state.fullCount().plants());
        return new BatchHistory(
                state.batch().stuckAt(),
                state.reachedAt(),
                state.placements().stream()
                        .map(placement -> new BatchHistory.Placement(placement.house(), placement.fromInclusive()))
                        .toList(),
                base,
                state.lossesSince().stream()
                        .map(loss -> new Plants(loss.at(), loss.plants()))
                        .toList(),
                List.of(),
                null);
    }

    private CellSupply supply(int asOfDay) {
        Outlook outlook = outlook(asOfDay);
        SupplyLot lot = LotOfBatch.of(batch.id(), outlook, NORTH).orElseThrow();
        return new CellSupply(List.of(lot), promises, NORTH.dayOf(at(asOfDay)));
    }

    private Promise placed(String order, String shipOn, int trays) {
        var line = new WantedLine(1, CELL, LocalDate.parse(shipOn), trays);
        assertThat(MatchRules.place(List.of(line), 0.9, cell -> supply(9))).isInstanceOf(Placing.Accepted.class);
        var promise = new Promise(order, 1, line.shipOn(), trays, 0.9, 1);
        promises.add(promise);
        return promise;
    }

    private List<BoardCell> board(int asOfDay) {
        List<ShipWeek> weeks = Stream.of("2026-W05", "2026-W06", "2026-W07", "2026-W08")
                .map(ShipWeek::parse)
                .toList();
        var head = new RowHead(CELL, "Lavandula angustifolia 'Test'", "lavandula", "Lavender");
        CellSupply supply = supply(asOfDay);
        return new BoardModel(weeks, 0.9, NORTH.shipDay(), supply.today())
                .row(head, supply)
                .cells();
    }

    private static BoardCell week(String week, int ready, int promised, int open, int likely, int atRisk) {
        ShipWeek of = ShipWeek.parse(week);
        return new BoardCell(of, NORTH.shipDayOf(of), ready, promised, open, likely, atRisk, 0);
    }

    private static StageProfile stage(Stage stage, double days, double survival) {
        return new StageProfile(stage, days, new Cardinals(Cardinals.Form.LINEAR, 5, 24, 36, 22), survival, 4_000);
    }

    private static Instant at(double day) {
        return STUCK.plusMillis(Math.round(day * 86_400_000));
    }

    private static double days(Instant at) {
        return Duration.between(STUCK, at).toMillis() / 86_400_000.0;
    }
}
