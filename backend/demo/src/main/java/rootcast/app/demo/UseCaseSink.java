package rootcast.app.demo;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rootcast.app.availability.PlaceOrder;
import rootcast.app.availability.SupplyAtHead;
import rootcast.app.availability.store.Orders;
import rootcast.app.climate.RecordReadings;
import rootcast.app.climate.store.Sensors;
import rootcast.app.crop.CropSeed;
import rootcast.app.crop.SeededCrops;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.crop.store.Recipes;
import rootcast.app.ledger.RecordEntry;
import rootcast.app.ledger.StickBatch;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.once.Commits;
import rootcast.app.once.FactHead;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.problem.Problem;
import rootcast.app.rounds.Pests;
import rootcast.app.rounds.RecordedCare;
import rootcast.app.rounds.store.RoundCares;
import rootcast.app.site.StatedMove;
import rootcast.app.site.store.Places;
import rootcast.app.snapshot.Snapshots;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.availability.WantedLine;
import rootcast.ledger.OrderLine;
import rootcast.ledger.What;
import rootcast.rounds.Care;
import rootcast.site.House;
import rootcast.site.Site;

/** Hands the demo's facts to the use cases that people's entries go through. */
@ApplicationScoped
class UseCaseSink implements DemoSink {

    /** The business has grown its crops for years and knows their days to a twentieth. */
    private static final double DAYS_DOUBT = 0.05;

    private static final String KEY = "demo-";

    private static final Duration CAUGHT_UP_WITHIN = Duration.ofMinutes(1);

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
    SeededCrops seeded;

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
    Orders orders;

    @Inject
    PanacheLedger ledger;

    @Inject
    SupplyAtHead supply;

    @Inject
    RoundCares cares;

    @Inject
    Snapshots snapshots;

    @Inject
    Commits commits;

    private final Map<String, String> batchIds = new HashMap<>();
    private final Map<UUID, UUID> entryIds = new HashMap<>();
    private final Map<UUID, UUID> orderIds = new HashMap<>();

    private Instant startAt = Instant.EPOCH;

    /** What a write of several answers; parted by spaces, so that a repeat gives them again. */
    record Ids(String ids) {
        static Ids of(List<String> each) {
            return new Ids(String.join(" ", each));
        }
    }

    /** Whether the database holds somebody's own sites, into which the demo must not be told. */
    boolean isSomebodysOwn(DemoSetup setup) {
        List<String> sites = places.sites().stream().map(Site::code).toList();
        return !sites.isEmpty()
                && !sites.containsAll(
                        setup.sites().stream().map(DemoSetup.Place::code).toList());
    }

    /** The instant that all of the demo is told from: that of the first attempt to load it, which its recipes bear. */
    Instant startAt(DemoSetup setup, Instant now) {
        List<Recipes.Stored> before = recipes.versions(setup.crops().get(0));
        startAt = before.isEmpty() ? now : before.get(before.size() - 1).recordedAt();
        return startAt;
    }

    @Override
    public void setUp(DemoSetup setup, List<CropSeed> crops) {
        write("setup", () -> {
            setup.sites().forEach(site -> places.save(site.site(), head.nextForSetup()));
            setup.houses().forEach(house -> places.save(house.house(), head.nextForSetup()));
            setup.houses().forEach(this::sayWhereBatchesGoOn);
            setup.trayFormats().forEach(format -> catalogue.save(format, head.nextForSetup()));
            crops.forEach(crop -> seeded.saveKnown(seeded.all().get(crop.code()), DAYS_DOUBT, startAt));
            setup.varieties().forEach(variety -> catalogue.save(variety, head.nextForSetup()));
            return Ids.of(List.of());
        });
    }

    /** As long as the business is told of: its growers have always carried them there. */
    private void sayWhereBatchesGoOn(DemoSetup.Building house) {
        house.next(startAt)
                .ifPresent(next ->
                        places.add(new StatedMove(house.code(), next.move(), next.statedAt()), head.nextForSetup()));
    }

    @Override
    public void readings(List<DemoReading> readings) {
        DemoReading last = readings.get(readings.size() - 1);
        once.write(
                OnceKey.none(),
                "demo readings",
                "",
                200,
                () -> recordReadings.backfill(DemoSensors.numbered(readings), last.at()));
    }

    /** A sensor for each simulated quantity of a house, with a topic that the simulator can send to. */
    void sensors(List<House> houses) {
        write("sensors", () -> {
            for (House house : houses) {
                for (String measured : DemoSensors.MEASURED) {
                    sensors.save(DemoSensors.sensor(house, measured), head.nextForSetup());
                }
            }
            return Ids.of(List.of());
        });
    }

    @Override
    public void batches(List<DemoBatch> batches) {
        List<String> ids = together("batches-" + batches.get(0).key(), batches, this::stick);
        for (int i = 0; i < ids.size(); i++) {
            batchIds.put(batches.get(i).key(), ids.get(i));
        }
    }

    private String stick(DemoBatch batch) {
        var wanted = new StickBatch.Wanted(
                batch.site(),
                batch.house(),
                batch.variety(),
                batch.trayFormat().code(),
                batch.stuckAt(),
                batch.trays(),
                batch.plants(),
                null);
        return stickBatch
                .stick(wanted, batch.recordedBy(), batch.recordedAt())
                .after()
                .batch()
                .id();
    }

    @Override
    public void entries(List<DemoEntry> entries) {
        List<String> ids = together("entries-" + entries.get(0).id(), entries, this::record);
        for (int i = 0; i < ids.size(); i++) {
            entryIds.put(entries.get(i).id(), UUID.fromString(ids.get(i)));
        }
    }

    private String record(DemoEntry entry) {
        UUID id = recordEntry
                .record(
                        batchIds.get(entry.batch()),
                        entry.happenedAt(),
                        withOurIds(entry.what()),
                        entry.note(),
                        entry.recordedBy(),
                        entry.recordedAt())
                .id();
        entryIds.put(entry.id(), id); // one that follows in this transaction may reverse it
        return id.toString();
    }

    private What withOurIds(What what) {
        if (what instanceof What.Reversal reversal) {
            return new What.Reversal(entryIds.get(reversal.entry()), reversal.reason());
        }
        if (what instanceof What.Ship ship && ship.orderLine() != null) {
            OrderLine told = ship.orderLine();
            return noMoreThanAgreed(ship, new OrderLine(orderIds.get(told.order()), told.line()));
        }
        return what;
    }

    /** A customer who took fewer trays than told is sent no more of them. */
    private What noMoreThanAgreed(What.Ship ship, OrderLine line) {
        int agreed = orders.order(line.order()).orElseThrow().lines().stream()
                .filter(each -> each.line() == line.line())
                .mapToInt(WantedLine::trays)
                .sum();
        int left = agreed - ledger.traysShippedFor(line);
        if (left < 1) {
            return new What.Ship(ship.trays(), ship.plants(), null);
        }
        int trays = Math.min(ship.trays(), left);
        return new What.Ship(trays, (int) ((long) ship.plants() * trays / ship.trays()), line);
    }

    @Override
    public boolean order(DemoOrder order) {
        // A promise is decided on the snapshot and what came since: with all of that in it, one is quickly decided.
        snapshots.atLeast(commits.own(), CAUGHT_UP_WITHIN);
        try {
            Once.Answer answer = write("order-" + order.id(), () -> {
                List<WantedLine> lines = new ArrayList<>();
                for (DemoOrder.Line line : order.lines()) {
                    Cell cell = new Cell(line.variety(), line.trayFormat(), line.site());
                    lines.add(new WantedLine(lines.size() + 1, cell, line.shipOn(), line.trays()));
                }
                AgreedOrder agreed = agreed(lines, order);
                var wanted = new PlaceOrder.Wanted(
                        UUID.randomUUID(), order.customer(), null, agreed.confidence(), agreed.lines());
                return Ids.of(List.of(placeOrder
                        .place(wanted, "demo", order.recordedAt())
                        .order()
                        .id()
                        .toString()));
            });
            orderIds.put(order.id(), UUID.fromString(idsOf(answer).get(0)));
            return true;
        } catch (Problem notEnough) {
            return false;
        }
    }

    private AgreedOrder agreed(List<WantedLine> lines, DemoOrder order) {
        Map<Cell, CellSupply> open =
                supply.of(lines.stream().map(WantedLine::cell).distinct().toList(), order.recordedAt());
        return AgreedOrder.of(lines, order.confidence(), open);
    }

    @Override
    public void cares(List<DemoCare> done) {
        write("cares", () -> {
            done.forEach(care -> cares.add(recorded(care)));
            return Ids.of(List.of());
        });
    }

    private RecordedCare recorded(DemoCare care) {
        String batch = care.batch() == null ? null : batchIds.get(care.batch());
        String of = batch == null ? care.house() : batch;
        String item = care.task().wireName() + "." + of + (care.occurrence().isEmpty() ? "" : "." + care.occurrence());
        DemoCare.Found found = care.found();
        return new RecordedCare(
                UUID.randomUUID(),
                care.site(),
                new Care(
                        item,
                        care.task(),
                        care.house(),
                        batch,
                        care.dueOn(),
                        care.skippedFor() == null,
                        care.at(),
                        found.level(),
                        found.ecMsPerCm()),
                care.at(),
                care.by(),
                care.skippedFor(),
                found.note(),
                trapped(found.gnats()),
                null,
                found.arrival(),
                found.count() == null ? List.of() : List.of(entryIds.get(found.count())));
    }

    private static Pests trapped(@Nullable Integer gnats) {
        return gnats == null ? Pests.NONE_SAID : new Pests(4, gnats, gnats / 2, 0, 0, 0, 0, 0);
    }

    /** All in one transaction or none; the ids they were given, in their order. */
    private <T> List<String> together(String name, List<T> facts, Function<T, String> work) {
        return idsOf(write(name, () -> Ids.of(facts.stream().map(work).toList())));
    }

    private List<String> idsOf(Once.Answer answer) {
        return List.of(once.member(answer, "ids").split(" "));
    }

    /** Once, however often the demo is started. */
    private Once.Answer write(String name, Supplier<?> work) {
        return once.write(OnceKey.optional(KEY + name), "demo", name, 201, work);
    }
}
