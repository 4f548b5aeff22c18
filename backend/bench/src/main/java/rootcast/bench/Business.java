package rootcast.bench;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.TreeMap;
import java.util.stream.IntStream;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.availability.LotOfBatch;
import rootcast.availability.SupplyLot;
import rootcast.board.BoardModel;
import rootcast.board.BoardRow;
import rootcast.board.RowHead;
import rootcast.climate.HourlySeries;
import rootcast.climate.SetpointPlan;
import rootcast.crop.Cardinals;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.crop.StageProfile;
import rootcast.crop.TrayFormat;
import rootcast.outlook.BatchHistory;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.HouseCurves;
import rootcast.outlook.Outlook;
import rootcast.site.ShipWeek;
import rootcast.site.Site;

/**
 * An invented business of the size to plan for: 240 houses with hourly readings for nine weeks, 15 crops of three stages,
 * and live batches up to six weeks old, some looked at, spread over houses, crops and 1 500 varieties.
 */
public final class Business {

    static final int HOUSES = 240;
    private static final int CROPS = 15;
    private static final int VARIETIES = 1_500;
    private static final int SITES = 12;
    private static final int WEEKS = 8;
    private static final TrayFormat TRAY = new TrayFormat("T105", 105, 100, 540, 280);
    private static final Site ANYWHERE = new Site("any", "Any", ZoneOffset.UTC, DayOfWeek.MONDAY);
    private static final Instant START = Instant.parse("2026-01-05T00:00:00Z");

    public record Batch(String id, Cell cell, BatchHistory history, CropProfile profile) {}

    public final HouseCurves houses;
    final List<HourlySeries> series = new ArrayList<>();
    public final List<Batch> batches = new ArrayList<>();
    final List<BatchOutlook> kept;
    private final Map<Cell, List<Integer>> cells = new TreeMap<>();
    private final Random random = new Random(20260105);
    private Instant now = START.plus(Duration.ofDays(63));

    public Business(int liveBatches) {
        houses = new HouseCurves(now);
        for (int house = 0; house < HOUSES; house++) {
            HourlySeries medium = new HourlySeries();
            for (Instant at = START; at.isBefore(now); at = at.plus(Duration.ofHours(1))) {
                medium.add(at, mediumC(at));
            }
            series.add(medium);
            houses.house("H" + house, medium, SetpointPlan.of(21.5));
        }
        List<CropProfile> crops =
                IntStream.range(0, CROPS).mapToObj(Business::crop).toList();
        for (int i = 0; i < liveBatches; i++) {
            int variety = random.nextInt(VARIETIES);
            // Batches of one house follow one another, as the application goes through them.
            int number = (int) ((long) i * HOUSES / liveBatches);
            String house = "H" + number;
            int site = number * SITES / HOUSES;
            Cell cell = new Cell("V" + variety, TRAY.code(), "S" + site);
            cells.computeIfAbsent(cell, any -> new ArrayList<>()).add(i);
            batches.add(new Batch("B" + i, cell, history(house), crops.get(variety % CROPS)));
        }
        kept = batches.stream()
                .map(batch -> BatchOutlook.of(batch.history(), batch.profile(), TRAY, houses))
                .toList();
    }

    private double mediumC(Instant at) {
        double hour = at.getEpochSecond() / 3600.0;
        return 21.5 + Math.sin(hour * Math.PI / 12) + 0.3 * random.nextGaussian();
    }

    private BatchHistory history(String house) {
        Instant stuck = now.minus(Duration.ofHours(1 + random.nextInt(24 * 42)));
        Map<Stage, Instant> reached = new HashMap<>();
        List<BatchHistory.Look> looks = new ArrayList<>();
        double age = Duration.between(stuck, now).toHours() / 24.0;
        if (age > 6) {
            looks.add(new BatchHistory.Look(stuck.plus(Duration.ofDays(5)), Stage.CALLUS, 40, random.nextInt(30)));
        }
        if (age > 10) {
            reached.put(Stage.CALLUS, stuck.plus(Duration.ofDays(8)));
        }
        if (age > 20) {
            reached.put(Stage.ROOT, stuck.plus(Duration.ofDays(18)));
        }
        int plants = 1_050 + 105 * random.nextInt(60);
        return new BatchHistory(
                stuck,
                reached,
                List.of(new BatchHistory.Placement(house, stuck)),
                new BatchHistory.Plants(stuck, plants),
                List.of(),
                List.of(),
                null,
                looks);
    }

    private static CropProfile crop(int number) {
        double shift = number * 0.1;
        return new CropProfile(
                List.of(
                        stage(Stage.STICK, 6 + shift, 8 + shift),
                        stage(Stage.CALLUS, 8 + 2 * shift, 9 + shift),
                        stage(Stage.ROOT, 9 + 3 * shift, 6 + shift)),
                0.1,
                8);
    }

    private static StageProfile stage(Stage stage, double days, double minC) {
        return new StageProfile(stage, days, new Cardinals(Cardinals.Form.BETA, minC, 27, 36, 22), 0.97, 150);
    }

    Instant now() {
        return now;
    }

    /** One more hour with a reading in every house. */
    public void anHourPasses() {
        for (int house = 0; house < HOUSES; house++) {
            series.get(house).add(now, mediumC(now));
            houses.changed("H" + house, now);
        }
        now = now.plus(Duration.ofHours(1));
        houses.advanceTo(now);
    }

    /** Every outlook as of now, the cores shared as the application does. */
    List<Outlook> outlooks() {
        houses.bringUpToDate();
        return kept.parallelStream().map(BatchOutlook::now).toList();
    }

    /** Every row of the board at 90 %. */
    List<BoardRow> board(List<Outlook> outlooks) {
        LocalDate today = now.atZone(ZoneOffset.UTC).toLocalDate();
        List<ShipWeek> weeks = IntStream.range(0, WEEKS)
                .mapToObj(ShipWeek.of(today)::plusWeeks)
                .toList();
        return cells.entrySet().parallelStream()
                .map(cell -> {
                    List<SupplyLot> lots = cell.getValue().stream()
                            .flatMap(i -> LotOfBatch.of(batches.get(i).id(), outlooks.get(i), ANYWHERE).stream())
                            .toList();
                    var head = new RowHead(cell.getKey(), cell.getKey().variety(), "crop", "crop");
                    return new BoardModel(weeks, 0.9, DayOfWeek.MONDAY, today)
                            .row(head, new CellSupply(lots, List.of(), today));
                })
                .toList();
    }
}
