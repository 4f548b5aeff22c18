package rootcast.app.flow;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Consumer;
import rootcast.app.availability.store.Orders;
import rootcast.app.climate.store.Readings;
import rootcast.app.crop.CatalogueSnapshot;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.ledger.RecordedBatch;
import rootcast.app.ledger.store.PanacheLedger;
import rootcast.app.site.SitesSnapshot;
import rootcast.app.site.store.Places;
import rootcast.facts.FactPosition;
import rootcast.ledger.OrderLine;
import rootcast.ledger.What;

/**
 * Reads facts from the tables. It locks nothing: a fact that is committed while it reads may be in the answer early, and
 * comes again with the next one, which changes nothing.
 */
@ApplicationScoped
class FactReader {

    @Inject
    PanacheLedger ledger;

    @Inject
    Orders orders;

    @Inject
    Readings readings;

    @Inject
    Places places;

    @Inject
    Catalogue catalogue;

    /** Facts after a position up to {@code to}. */
    @Transactional
    Facts between(FactPosition from, FactPosition to, boolean setupChanged, Instant now) {
        List<RecordedBatch> batches = ledger.recorded(ledger.touchedBetween(from, to));
        return new Facts(
                to,
                now,
                setupChanged ? setup() : null,
                readings.between(from, to),
                orders.changedBetween(from, to),
                batches,
                shippedBy(batches));
    }

    /**
     * Everything that a snapshot is made of.
     *
     * @param to    read before this was called
     * @param hours takes the hours one by one: there are many
     */
    @Transactional
    Facts all(FactPosition to, Instant now, Consumer<Readings.Hour> hours) {
        readings.eachHour(hours);
        return new Facts(
                to,
                now,
                setup(),
                List.of(),
                orders.open(),
                ledger.recorded(ledger.withPlantsAlive()),
                ledger.traysShipped());
    }

    /** Facts after a position, of the entries only those of some batches. */
    @Transactional
    Facts between(
            FactPosition from, FactPosition to, boolean setupChanged, Instant now, Collection<String> batchesAsked) {
        Set<String> touched = ledger.touchedBetween(from, to);
        touched.retainAll(batchesAsked);
        List<RecordedBatch> batches = ledger.recorded(touched);
        return new Facts(
                to,
                now,
                setupChanged ? setup() : null,
                readings.between(from, to),
                orders.changedBetween(from, to),
                batches,
                shippedBy(batches));
    }

    private Facts.Setup setup() {
        return new Facts.Setup(
                SitesSnapshot.of(places.sites()),
                CatalogueSnapshot.of(
                        catalogue.varieties(),
                        catalogue.crops().stream().map(SourcedCrop::crop).toList()),
                places.houses(),
                places.plans());
    }

    private Map<OrderLine, Integer> shippedBy(List<RecordedBatch> batches) {
        Map<OrderLine, Integer> shipped = new HashMap<>();
        batches.stream()
                .filter(batch -> batch.entries() != null)
                .flatMap(batch -> batch.entries().stream())
                .map(entry -> entry.what() instanceof What.Ship ship ? ship.orderLine() : null)
                .filter(Objects::nonNull)
                .forEach(line -> shipped.computeIfAbsent(line, ledger::traysShippedFor));
        return shipped;
    }
}
