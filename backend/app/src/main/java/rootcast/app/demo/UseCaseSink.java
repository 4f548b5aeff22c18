package rootcast.app.demo;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import rootcast.app.availability.PlaceOrder;
import rootcast.app.availability.SupplyAtHead;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.RecordReadings;
import rootcast.app.climate.store.Sensors;
import rootcast.app.crop.RecipeText;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.crop.store.Recipes;
import rootcast.app.ledger.RecordEntry;
import rootcast.app.ledger.StickBatch;
import rootcast.app.once.FactHead;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.problem.Problem;
import rootcast.app.rounds.RecordedCare;
import rootcast.app.rounds.store.RoundCares;
import rootcast.app.site.store.Places;
import rootcast.availability.Cell;
import rootcast.availability.MatchRules;
import rootcast.availability.Placing;
import rootcast.availability.WantedLine;
import rootcast.climate.LightSource;
import rootcast.climate.Quantity;
import rootcast.climate.Sensor;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variety;
import rootcast.ledger.OrderLine;
import rootcast.ledger.What;
import rootcast.rounds.Care;
import rootcast.rounds.Task;
import rootcast.site.House;
import rootcast.site.Site;

/** Hands the demo's facts to the use cases that people's entries go through. */
@ApplicationScoped
class UseCaseSink implements DemoSink {

    private static final String KEY = "demo-";
    private static final String START = "start";

    @Inject
    Once once;

    @Inject
    FactHead head;

    @Inject
    Places places;

    @Inject
    Catalogue catalogue;

    @Inject
    Recipes recipes;

    @Inject
    RecordReadings recordReadings;

    @Inject
    Sensors sensors;

    @Inject
    StickBatch stickBatch;

    @Inject
    RecordEntry recordEntry;

    @Inject
    PlaceOrder placeOrder;

    @Inject
    SupplyAtHead supply;

    @Inject
    RoundCares cares;

    private final Map<String, RecipeSeed> recipeSeeds = RecipeSeed.all(SeedFiles.onClassPath());
    private final Map<String, String> batchIds = new HashMap<>();
    private final Map<UUID, UUID> entryIds = new HashMap<>();
    private final Map<UUID, UUID> orderIds = new HashMap<>();

    record Id(String id) {}

    private Instant startAt = Instant.EPOCH;

    /** Whether the database holds somebody's own sites, into which the demo must not be told. */
    boolean isSomebodysOwn() {
        return !places.sites().isEmpty() && !once.knows(OnceKey.optional(KEY + START));
    }

    /** The instant that all of the demo is told from: that of the first attempt to load it. */
    Instant startAt(Instant now) {
        Once.Answer answer = write(START, () -> Map.of("startAt", now.toString()));
        startAt = Instant.parse(once.member(answer, "startAt"));
        return startAt;
    }

    @Override
    public void site(Site site) {
        write("site-" + site.code(), () -> {
            places.save(site, head.nextForSetup());
            return new Id(site.code());
        });
    }

    @Override
    public void house(House house) {
        write("house-" + house.code(), () -> {
            places.save(house, head.nextForSetup());
            return new Id(house.code());
        });
    }

    @Override
    public void trayFormat(TrayFormat format) {
        write("tray-format-" + format.code(), () -> {
            catalogue.save(format, head.nextForSetup());
            return new Id(format.code());
        });
    }

    @Override
    public void crop(CropSeed seed) {
        write("crop-" + seed.code(), () -> {
            Map<Stage, String> sources = new EnumMap<>(Stage.class);
            Stage.GROWING.forEach(stage -> sources.put(stage, seed.source(stage)));
            var sourced =
                    new SourcedCrop(seed.crop(), 0, sources, seed.profile().note());
            catalogue.save(sourced, head.nextForSetup(), startAt);
            RecipeSeed recipe = recipeSeeds.get(seed.code());
            recipes.add(seed.code(), RecipeText.of(recipe.recipe(), recipe.source()), startAt);
            return new Id(seed.code());
        });
    }

    @Override
    public void variety(Variety variety) {
        write("variety-" + variety.code(), () -> {
            catalogue.save(variety, head.nextForSetup());
            return new Id(variety.code());
        });
    }

    @Override
    public void readings(List<DemoReading> readings) {
        DemoReading last = readings.get(readings.size() - 1);
        once.write(
                OnceKey.none(), "demo readings", "", 200, () -> recordReadings.backfill(numbered(readings), last.at()));
    }

    /** A sensor for each simulated quantity of a house, with a topic that the simulator can send to. */
    void sensors(List<House> houses) {
        for (House house : houses) {
            for (String measured :
                    List.of(DemoReading.MEDIUM, DemoReading.AIR, DemoReading.HUMIDITY, DemoReading.LIGHT)) {
                Quantity quantity = Quantity.ofWireName(measured).orElseThrow();
                Sensor sensor = new Sensor(
                        sensorOf(house.code(), quantity),
                        house.code(),
                        quantity,
                        quantity.unit(),
                        topicOf(house.code(), measured),
                        0,
                        LightSource.SUN,
                        null);
                write("sensor-" + sensor.code(), () -> {
                    sensors.save(sensor, head.nextForSetup());
                    return new Id(sensor.code());
                });
            }
        }
    }

    private static String sensorOf(String house, Quantity quantity) {
        return house
                + switch (quantity) {
                    case MEDIUM_TEMPERATURE -> "-medium";
                    case AIR_TEMPERATURE -> "-air";
                    case RELATIVE_HUMIDITY -> "-rh";
                    case LIGHT -> "-light";
                    case MEDIUM_MOISTURE -> "-moisture";
                    case EC -> "-ec";
                };
    }

    static String topicOf(String house, String quantity) {
        return "demo/" + house + "/" + quantity;
    }

    private static List<RecordReadings.Numbered> numbered(List<DemoReading> readings) {
        List<RecordReadings.Numbered> numbered = new ArrayList<>(readings.size());
        for (DemoReading reading : readings) {
            Quantity quantity = Quantity.ofWireName(reading.quantity()).orElseThrow();
            numbered.add(new RecordReadings.Numbered(
                    numbered.size(),
                    new HouseReading(
                            reading.house(),
                            quantity,
                            sensorOf(reading.house(), quantity),
                            reading.at(),
                            reading.value(),
                            reading.value(),
                            quantity.unit().ucum())));
        }
        return numbered;
    }

    @Override
    public void batch(DemoBatch batch) {
        Once.Answer answer = write("batch-" + batch.key(), () -> {
            var wanted = new StickBatch.Wanted(
                    batch.site(),
                    batch.house(),
                    batch.variety(),
                    batch.trayFormat().code(),
                    batch.stuckAt(),
                    batch.trays(),
                    batch.plants(),
                    null);
            return new Id(stickBatch
                    .stick(wanted, batch.recordedBy(), batch.recordedAt())
                    .after()
                    .batch()
                    .id());
        });
        batchIds.put(batch.key(), once.member(answer, "id"));
    }

    @Override
    public void entry(DemoEntry entry) {
        Once.Answer answer = write("entry-" + entry.id(), () -> {
            var recorded = recordEntry.record(
                    batchIds.get(entry.batch()),
                    entry.happenedAt(),
                    withOurIds(entry.what()),
                    entry.note(),
                    entry.recordedBy(),
                    entry.recordedAt());
            return new Id(recorded.id().toString());
        });
        entryIds.put(entry.id(), UUID.fromString(once.member(answer, "id")));
    }

    private What withOurIds(What what) {
        if (what instanceof What.Reversal reversal) {
            return new What.Reversal(entryIds.get(reversal.entry()), reversal.reason());
        }
        if (what instanceof What.Ship ship && ship.orderLine() != null) {
            OrderLine line = ship.orderLine();
            return new What.Ship(ship.trays(), ship.plants(), new OrderLine(orderIds.get(line.order()), line.line()));
        }
        return what;
    }

    @Override
    public boolean order(DemoOrder order) {
        try {
            Once.Answer answer = write("order-" + order.id(), () -> {
                List<WantedLine> lines = new ArrayList<>();
                for (DemoOrder.Line line : order.lines()) {
                    Cell cell = new Cell(line.variety(), line.trayFormat(), line.site());
                    lines.add(new WantedLine(lines.size() + 1, cell, line.shipOn(), line.trays()));
                }
                var wanted = new PlaceOrder.Wanted(
                        UUID.randomUUID(), order.customer(), null, order.confidence(), agreed(lines, order));
                return new Id(placeOrder
                        .place(wanted, "demo", order.recordedAt())
                        .order()
                        .id()
                        .toString());
            });
            orderIds.put(order.id(), UUID.fromString(once.member(answer, "id")));
            return true;
        } catch (Problem notEnough) {
            return false;
        }
    }

    /**
     * The lines as the customer takes them on the telephone: where too few trays are open on the day, on the nearest day
     * that has enough.
     */
    private List<WantedLine> agreed(List<WantedLine> lines, DemoOrder order) {
        List<WantedLine> agreed = lines;
        for (int round = 0; round < lines.size(); round++) {
            Placing placing = MatchRules.place(agreed, order.confidence(), cell -> supply.of(cell, order.recordedAt()));
            if (!(placing instanceof Placing.Refused refused)) {
                return agreed;
            }
            agreed = agreed.stream().map(line -> moved(line, refused)).toList();
        }
        return agreed;
    }

    private static WantedLine moved(WantedLine line, Placing.Refused refused) {
        return refused.lines().stream()
                .filter(no -> no.wanted().line() == line.line() && no.nearest() != null)
                .findFirst()
                .map(no -> new WantedLine(line.line(), line.cell(), no.nearest().date(), line.trays()))
                .orElse(line);
    }

    @Override
    public void cares(List<DemoCare> done) {
        write("cares", () -> {
            done.forEach(care -> cares.add(recorded(care)));
            return new Id(String.valueOf(done.size()));
        });
    }

    private RecordedCare recorded(DemoCare care) {
        String batch = care.batch() == null ? null : batchIds.get(care.batch());
        String of = batch == null ? care.house() : batch;
        String item = care.task().wireName() + "." + of + (care.occurrence().isEmpty() ? "" : "." + care.occurrence());
        Integer trapped = care.task() == Task.SCOUTING ? 2 : null;
        return new RecordedCare(
                UUID.randomUUID(),
                care.site(),
                new Care(item, care.task(), care.house(), batch, care.dueOn(), true, care.at(), care.level()),
                care.at(),
                "demo",
                null,
                null,
                trapped,
                trapped,
                null,
                List.of());
    }

    /** Once, however often the demo is started. */
    private Once.Answer write(String name, Supplier<?> work) {
        return once.write(OnceKey.optional(KEY + name), "demo", name, 201, work);
    }
}
