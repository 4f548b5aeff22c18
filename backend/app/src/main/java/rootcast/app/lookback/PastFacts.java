package rootcast.app.lookback;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.InstantSource;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import rootcast.app.availability.Order;
import rootcast.app.availability.PromisesSnapshot;
import rootcast.app.availability.store.Orders;
import rootcast.app.climate.ClimateSnapshot;
import rootcast.app.climate.HoursThen;
import rootcast.app.climate.store.Readings;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.outlook.AsOf;
import rootcast.app.outlook.BatchInTime;
import rootcast.app.outlook.BatchSnapshot;
import rootcast.app.site.LiveSites;
import rootcast.app.snapshot.Snapshots;
import rootcast.availability.Cell;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.BatchState;
import rootcast.ledger.Entry;
import rootcast.ledger.OrderLine;
import rootcast.outlook.BatchOutlook;
import rootcast.outlook.HistoryOfBatch;
import rootcast.outlook.HouseCurves;

/** What had happened and was known as of an instant. */
@ApplicationScoped
@Transactional
class PastFacts {

    @Inject
    PanacheLedger ledger;

    @Inject
    Orders orders;

    @Inject
    HoursThen hoursThen;

    @Inject
    Catalogue catalogue;

    @Inject
    LiveSites sites;

    @Inject
    Snapshots snapshots;

    @Inject
    InstantSource time;

    /** A batch's entries of then, folded. */
    record PastBatch(Batch batch, Entry newest, BatchState state) {}

    Optional<PastBatch> batch(String id, AsOf when) {
        return ledger.batch(id).flatMap(batch -> past(batch, ledger.entriesOf(id), when));
    }

    /** Every batch that there was. */
    List<PastBatch> batches(AsOf when) {
        return batches(ledger.ids(), when);
    }

    /** The batches of one cell that there were. */
    List<PastBatch> batches(Cell cell, AsOf when) {
        return batches(ledger.idsOf(cell), when);
    }

    /** A batch that cannot be read is left out, as it is of the live board. */
    private List<PastBatch> batches(List<String> ids, AsOf when) {
        return ledger.recorded(ids).stream()
                .filter(recorded -> recorded.entries() != null)
                .flatMap(recorded -> past(recorded.batch(), recorded.entries(), when).stream())
                .toList();
    }

    private static Optional<PastBatch> past(Batch batch, List<Entry> entries, AsOf when) {
        List<Entry> known = entries.stream()
                .filter(entry -> !entry.recordedAt().isAfter(when.recordedBy()))
                .toList();
        return BatchFold.of(batch, known).stateAt(when.happenedBy()).map(state -> {
            Entry newest = known.stream()
                    .filter(entry -> !entry.happenedAt().isAfter(when.happenedBy()))
                    .reduce((earlier, later) -> later)
                    .orElseThrow();
            return new PastBatch(batch, newest, state);
        });
    }

    /** Curves of these houses as of then, of the caller's own. */
    HouseCurves curves(Collection<String> houses, AsOf when) {
        List<Readings.Hour> then =
                when.recordedBy().isBefore(time.instant()) ? hoursThen.of(houses, when.recordedBy()) : List.of();
        return snapshots.now().part(ClimateSnapshot.class).curves(houses, when.happenedBy(), when.orderedBy(), then);
    }

    /**
     * Promises that stood then.
     *
     * @param batches as they were then; what they shipped is no longer promised
     */
    PromisesSnapshot promises(AsOf when, List<BatchSnapshot> batches) {
        List<Order> stood = orders.all().stream()
                .filter(order -> !order.recordedAt().isAfter(when.orderedBy()))
                .map(order -> stillStood(order, when.orderedBy()))
                .toList();
        Map<OrderLine, Integer> shipped = new HashMap<>();
        batches.forEach(
                batch -> batch.state().shippedTo().forEach((line, trays) -> shipped.merge(line, trays, Integer::sum)));
        return PromisesSnapshot.NONE.with(stood, shipped);
    }

    private static Order stillStood(Order order, Instant then) {
        Instant released = order.releasedAt();
        return released == null || !released.isAfter(then) ? order : order.unreleased();
    }

    BatchInTime.Version profile(Batch batch, Instant then) {
        String crop = catalogue.variety(batch.variety()).orElseThrow().crop();
        SourcedCrop inForce = catalogue.profileInForce(crop, then).orElseThrow();
        return new BatchInTime.Version(
                inForce.version(), inForce.crop().profile().forBatch(batch.variety(), batch.site()));
    }

    BatchSnapshot snapshot(PastBatch past, BatchOutlook made) {
        Batch batch = past.batch();
        FactPosition newest = past.newest().position();
        return past.state().isFinished()
                ? BatchSnapshot.finished(batch, newest, past.state())
                : BatchSnapshot.of(batch, newest, past.state(), made.now(), sites.site(batch.site()));
    }

    BatchOutlook outlook(PastBatch past, BatchInTime.Version profile, HouseCurves houses) {
        return BatchOutlook.of(
                HistoryOfBatch.of(past.state()), profile.profile(), past.batch().trayFormat(), houses);
    }
}
