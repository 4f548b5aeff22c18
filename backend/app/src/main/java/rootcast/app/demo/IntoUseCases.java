package rootcast.app.demo;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.type.TypeReference;
import com.fasterxml.jackson.databind.ObjectMapper;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.InstantSource;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;
import org.jboss.logging.Logger;
import rootcast.app.availability.Order;
import rootcast.app.availability.SupplyAtHead;
import rootcast.app.availability.store.Orders;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.RecordReadings;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.ledger.RecordEntry;
import rootcast.app.ledger.StickBatch;
import rootcast.app.once.FactHead;
import rootcast.app.once.Once;
import rootcast.app.once.OnceKey;
import rootcast.app.site.store.Places;
import rootcast.availability.Cell;
import rootcast.availability.MatchRules;
import rootcast.availability.Placing;
import rootcast.availability.WantedLine;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.crop.Variety;
import rootcast.ledger.What;
import rootcast.site.House;
import rootcast.site.Site;

/**
 * Puts the demo through the application's own use cases and rules, each part once under a key of its own, so that a load
 * that was interrupted goes on where it stopped.
 */
@ApplicationScoped
class IntoUseCases implements DemoSink {

    private static final Logger LOG = Logger.getLogger(IntoUseCases.class);

    @Inject
    Once once;

    @Inject
    FactHead head;

    @Inject
    Places places;

    @Inject
    Catalogue catalogue;

    @Inject
    RecordReadings recordReadings;

    @Inject
    StickBatch stickBatch;

    @Inject
    RecordEntry recordEntry;

    @Inject
    Orders orders;

    @Inject
    SupplyAtHead supply;

    @Inject
    ObjectMapper json;

    @Inject
    InstantSource time;

    /** The application's id of every batch and entry, by the demo's own. */
    private final Map<String, String> ids = new HashMap<>();

    @Override
    public void site(Site site) {
        write("site " + site.code(), () -> {
            places.save(site, head.next());
            return null;
        });
    }

    @Override
    public void house(House house) {
        write("house " + house.code(), () -> {
            places.save(house, head.next());
            return null;
        });
    }

    @Override
    public void trayFormat(TrayFormat format) {
        write("tray format " + format.code(), () -> {
            catalogue.save(format, head.next());
            return null;
        });
    }

    @Override
    public void crop(CropSeed crop) {
        write("crop " + crop.code(), () -> {
            Map<Stage, String> sources = new EnumMap<>(Stage.class);
            Stage.GROWING.forEach(stage -> sources.put(stage, crop.source(stage)));
            SourcedCrop sourced =
                    new SourcedCrop(crop.crop(), 0, sources, crop.profile().note());
            catalogue.save(sourced, head.next(), time.instant());
            return null;
        });
    }

    @Override
    public void variety(Variety variety) {
        write("variety " + variety.code(), () -> {
            catalogue.save(variety, head.next());
            return null;
        });
    }

    @Override
    public void readings(List<DemoReading> readings) {
        List<RecordReadings.Numbered> numbered = new ArrayList<>();
        for (DemoReading reading : readings) {
            HouseReading taken = new HouseReading(reading.house(), reading.quantity(), reading.at(), reading.valueC());
            numbered.add(new RecordReadings.Numbered(numbered.size(), taken));
        }
        // Readings are kept once by themselves and need no key.
        once.write(OnceKey.none(), "demo readings", "", 200, () -> recordReadings.record(numbered, time.instant()));
    }

    @Override
    public void facts(List<DemoFact> facts) {
        DemoFact first = facts.get(0);
        String name = first instanceof DemoBatch batch
                ? batch.key()
                : ((DemoEntry) first).id().toString();
        String made = write("facts from " + name, () -> {
            Map<String, String> madeIds = new LinkedHashMap<>();
            facts.forEach(fact -> record(fact, madeIds));
            return madeIds;
        });
        ids.putAll(idsIn(made));
    }

    private void record(DemoFact fact, Map<String, String> madeIds) {
        if (fact instanceof DemoBatch batch) {
            StickBatch.Wanted wanted = new StickBatch.Wanted(
                    null,
                    batch.site(),
                    batch.house(),
                    batch.variety(),
                    batch.trayFormat().code(),
                    batch.stuckAt(),
                    batch.trays(),
                    batch.plants(),
                    null);
            RecordEntry.Recorded stuck = stickBatch.stick(wanted, batch.recordedBy(), batch.recordedAt());
            madeIds.put(batch.key(), stuck.after().batch().id());
        } else if (fact instanceof DemoEntry entry) {
            RecordEntry.Recorded written = recordEntry.record(
                    idOf(entry.batch(), madeIds),
                    entry.happenedAt(),
                    reversing(entry.what(), madeIds),
                    entry.note(),
                    entry.recordedBy(),
                    entry.recordedAt());
            madeIds.put(entry.id().toString(), written.id().toString());
        }
    }

    private What reversing(What what, Map<String, String> madeIds) {
        return what instanceof What.Reversal reversal
                ? new What.Reversal(UUID.fromString(idOf(reversal.entry().toString(), madeIds)), reversal.reason())
                : what;
    }

    private String idOf(String demoId, Map<String, String> madeIds) {
        String id = madeIds.getOrDefault(demoId, ids.get(demoId));
        if (id == null) {
            throw new IllegalStateException("nothing of the demo goes by " + demoId + " yet");
        }
        return id;
    }

    /**
     * An order taken for a day that has passed is checked as what it now is, due today, and kept under its own day: that
     * it was promised then cannot be decided anew.
     */
    @Override
    public boolean order(DemoOrder order) {
        List<WantedLine> lines = new ArrayList<>();
        List<WantedLine> dueNow = new ArrayList<>();
        for (DemoOrder.Line line : order.lines()) {
            Cell cell = new Cell(line.variety(), line.trayFormat(), line.site());
            LocalDate today = places.site(line.site()).orElseThrow().dayOf(time.instant());
            LocalDate dueOn = line.shipOn().isBefore(today) ? today : line.shipOn();
            int number = lines.size() + 1;
            lines.add(new WantedLine(number, cell, line.shipOn(), line.trays()));
            dueNow.add(new WantedLine(number, cell, dueOn, line.trays()));
        }
        String placed = write("order " + order.id(), () -> {
            Placing placing = MatchRules.place(dueNow, order.confidence(), supply::of);
            if (placing instanceof Placing.Refused refused) {
                LOG.infof("The demo's order of %s was refused: %s", order.customer(), refused.lines());
                return false;
            }
            orders.add(new Order(
                    order.id(),
                    order.customer(),
                    null,
                    order.confidence(),
                    order.recordedAt(),
                    head.next(),
                    lines,
                    null));
            return true;
        });
        return Boolean.parseBoolean(placed);
    }

    /** When the demo was first started; remembered with the first write. */
    Instant startedAt() {
        return Instant.parse(write("start", () -> time.instant().toString()).replace("\"", ""));
    }

    /** Says that everything was played. */
    void complete() {
        write("complete", () -> null);
    }

    private String write(String part, Supplier<?> work) {
        return once.write(OnceKey.optional("demo-" + part.replace(' ', '-')), "demo", part, 200, work)
                .body();
    }

    private Map<String, String> idsIn(String body) {
        try {
            return json.readValue(body, new TypeReference<Map<String, String>>() {});
        } catch (JsonProcessingException impossible) {
            throw new IllegalStateException(impossible);
        }
    }
}
