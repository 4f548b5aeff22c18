package rootcast.app.flow;

import io.quarkus.narayana.jta.QuarkusTransaction;
import io.quarkus.runtime.StartupEvent;
import io.quarkus.scheduler.Scheduled;
import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.event.Observes;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.InstantSource;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jboss.logging.Logger;
import rootcast.app.availability.LivePromises;
import rootcast.app.availability.LiveSupply;
import rootcast.app.availability.Order;
import rootcast.app.availability.SupplyAtHead;
import rootcast.app.availability.store.Orders;
import rootcast.app.board.BoardChanges;
import rootcast.app.board.LiveBoard;
import rootcast.app.climate.LiveClimate;
import rootcast.app.climate.LiveLock;
import rootcast.app.climate.store.Readings;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.once.FactHead;
import rootcast.app.once.Once;
import rootcast.app.outlook.BatchPicture;
import rootcast.app.outlook.LiveBatches;
import rootcast.availability.Cell;
import rootcast.availability.CellSupply;
import rootcast.climate.HourlySeries;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.Entry;

/**
 * Carries facts from the tables to the board: {@link #catchUp} is the main path.
 *
 * <p>The ledger is its own outbox. What is live has taken in every fact up to a position; catching up reads those after
 * it, so a crash between commit and board costs a delay and no loss, and a second process catches up the same way.
 */
@ApplicationScoped
public class AfterFact implements SupplyAtHead {

    private static final Logger LOG = Logger.getLogger(AfterFact.class);

    @Inject
    FactHead head;

    @Inject
    PanacheLedger ledger;

    @Inject
    Orders orders;

    @Inject
    Readings readings;

    @Inject
    LiveSetup setup;

    @Inject
    LiveClimate climate;

    @Inject
    LiveBatches batches;

    @Inject
    LivePromises promises;

    @Inject
    LiveSupply supply;

    @Inject
    LiveBoard board;

    @Inject
    LiveLock live;

    @Inject
    InstantSource time;

    private FactPosition takenIn = FactPosition.START;
    private volatile boolean started;

    /** Before the first request, and after whatever else writes at start. */
    void start(@Observes @Priority(100) StartupEvent event) {
        long entries = live.holding(() -> QuarkusTransaction.requiringNew().call(this::takeInAll));
        started = true;
        LOG.infof("%d batches live at position %d", entries, takenIn.value());
    }

    /** Makes what is live from nothing but the tables; holds the head, so that nothing is added meanwhile. */
    private long takeInAll() {
        Instant now = time.instant();
        head.hold();
        takenIn = head.last().position();
        climate.clear();
        batches.clear();
        promises.clear();
        readings.eachHour(climate::restore);
        setup.load();
        climate.curves().advanceTo(now);
        orders.open().forEach(promises::take);
        Map<String, List<Entry>> entries = ledger.allEntries();
        ledger.allBatches().values().forEach(batch -> batches.take(batch, entries.get(batch.id())));
        batches.takenIn(takenIn, now);
        board.startAt(takenIn, now);
        return entries.size();
    }

    void afterCommit(@Observes Once.FactsRecorded recorded) {
        if (started) {
            catchUp();
        }
    }

    /** Another process may have written; and the hour and the day go on without any fact. */
    @Scheduled(every = "15s", delayed = "15s", concurrentExecution = Scheduled.ConcurrentExecution.SKIP)
    void byTheClock() {
        if (started) {
            catchUp();
        }
    }

    /** From facts to board, in one go. */
    public void catchUp() {
        live.holding(() -> {
            try {
                BoardChanges changes = QuarkusTransaction.joiningExisting().call(this::takeIn);
                board.publish(changes);
            } catch (RuntimeException halfway) {
                takenIn = FactPosition.START;
                throw halfway;
            }
            return null;
        });
    }

    @Override
    public CellSupply of(Cell cell, Instant now) {
        catchUp();
        return supply.of(cell, now);
    }

    private BoardChanges takeIn() {
        FactHead.Last last = head.last();
        if (takenIn.equals(FactPosition.START) && last.position().compareTo(takenIn) > 0) {
            takeInAll(); // the last attempt broke off halfway: readings must not be added twice
            return board.everything(takenIn, time.instant());
        }
        FactPosition from = takenIn;
        FactPosition to = last.position();
        Instant now = time.instant();
        Set<String> changed = new HashSet<>();
        Set<Cell> cells = new HashSet<>();

        boolean news = to.compareTo(from) > 0;
        boolean setupChanged = last.setup().compareTo(from) > 0;
        if (setupChanged) {
            setup.load();
        }
        var newReadings = news ? readings.between(from, to) : List.<Readings.Hour>of();
        Set<String> measured = newReadings.stream().map(Readings.Hour::house).collect(Collectors.toSet());
        Map<String, Instant> warmerOrCooler = climate.add(newReadings);
        if (hourHasPassed(now) || setupChanged) {
            climate.curves().advanceTo(now);
            changed.addAll(batches.timePassed(warmerOrCooler));
        } else {
            changed.addAll(batches.housesChanged(warmerOrCooler));
        }
        if (board.dayHasPassed(now)) {
            cells.addAll(supply.cells());
        }
        List<Order> newOrders = news ? orders.changedBetween(from, to) : List.of();
        newOrders.forEach(order -> cells.addAll(promises.take(order)));
        if (news) {
            entryBatches(from, to).forEach(id -> changed.add(takeBatch(id)));
        }
        for (String id : changed) {
            cells.add(batches.picture(id).orElseThrow().cell());
        }
        takenIn = to;
        batches.takenIn(to, now);
        return new BoardChanges(to, now, cells, changed, measured, !newOrders.isEmpty(), setupChanged);
    }

    private boolean hourHasPassed(Instant now) {
        return HourlySeries.hourOf(now) != HourlySeries.hourOf(climate.curves().asOf());
    }

    private Set<String> entryBatches(FactPosition from, FactPosition to) {
        return ledger.entriesBetween(from, to).stream().map(Entry::batch).collect(Collectors.toSet());
    }

    private String takeBatch(String id) {
        Batch batch = ledger.batch(id).orElseThrow();
        BatchPicture picture = batches.take(batch, ledger.entriesOf(id));
        return picture.batch().id();
    }
}
