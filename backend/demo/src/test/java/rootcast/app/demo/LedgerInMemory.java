package rootcast.app.demo;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import rootcast.app.crop.CropSeed;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.BatchState;
import rootcast.ledger.Entry;
import rootcast.ledger.EntryRules;
import rootcast.ledger.What;

/** Takes the demo as the application would: every entry is put to the ledger's own rules at the time it was recorded. */
final class LedgerInMemory implements DemoSink {

    final List<String> refusals = new ArrayList<>();
    final List<DemoReading> readings = new ArrayList<>();
    final List<DemoEntry> entries = new ArrayList<>();
    final List<DemoOrder> orders = new ArrayList<>();
    final List<DemoCare> cares = new ArrayList<>();
    final List<String> setup = new ArrayList<>();

    private final Map<String, Batch> batches = new LinkedHashMap<>();
    private final Map<String, List<Entry>> recorded = new LinkedHashMap<>();
    private long position;
    private final boolean takesOrders;

    LedgerInMemory(boolean takesOrders) {
        this.takesOrders = takesOrders;
    }

    @Override
    public void setUp(DemoSetup business, List<CropSeed> crops) {
        business.sites().forEach(site -> setup.add("site " + site.code()));
        business.houses().forEach(house -> setup.add("house " + house.code()));
        business.trayFormats().forEach(format -> setup.add("format " + format.code()));
        crops.forEach(crop -> setup.add("crop " + crop.crop().code()));
        business.varieties().forEach(variety -> setup.add("variety " + variety.code()));
    }

    @Override
    public void readings(List<DemoReading> some) {
        readings.addAll(some);
    }

    @Override
    public void batches(List<DemoBatch> some) {
        some.forEach(this::batch);
    }

    private void batch(DemoBatch demo) {
        Batch batch = new Batch(demo.key(), demo.site(), demo.variety(), demo.trayFormat(), demo.stuckAt());
        batches.put(demo.key(), batch);
        recorded.put(demo.key(), new ArrayList<>());
        put(new DemoEntry(
                Diary.idOf(demo.key()),
                demo.key(),
                demo.stuckAt(),
                demo.recordedAt(),
                demo.recordedBy(),
                new What.Stick(demo.house(), demo.trays(), demo.plants()),
                null));
    }

    @Override
    public void entries(List<DemoEntry> some) {
        some.forEach(this::entry);
    }

    private void entry(DemoEntry entry) {
        entries.add(entry);
        put(entry);
    }

    @Override
    public boolean order(DemoOrder order) {
        orders.add(order);
        return takesOrders;
    }

    @Override
    public void cares(List<DemoCare> done) {
        cares.addAll(done);
    }

    Map<String, BatchFold> folds() {
        Map<String, BatchFold> folds = new LinkedHashMap<>();
        recorded.forEach((batch, list) -> folds.put(batch, BatchFold.of(batches.get(batch), list)));
        return folds;
    }

    BatchState state(String batch) {
        return folds().get(batch).state();
    }

    private void put(DemoEntry demo) {
        Entry entry = new Entry(
                demo.id(),
                new FactPosition(++position),
                demo.batch(),
                demo.happenedAt(),
                demo.recordedAt(),
                demo.recordedBy(),
                demo.what(),
                demo.note());
        List<Entry> before = recorded.get(demo.batch());
        EntryRules.Decision decision = EntryRules.decide(batches.get(demo.batch()), before, entry, demo.recordedAt());
        if (decision instanceof EntryRules.Decision.Refused refused) {
            refusals.add(demo.batch() + " " + demo.what() + " at " + demo.happenedAt() + ": " + refused.because());
        } else {
            before.add(entry);
        }
    }
}
