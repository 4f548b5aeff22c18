package rootcast.app.flow;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.app.availability.Order;
import rootcast.app.climate.store.Readings;
import rootcast.app.crop.CatalogueSnapshot;
import rootcast.app.ledger.RecordedBatch;
import rootcast.app.site.HousePlans;
import rootcast.app.site.SitesSnapshot;
import rootcast.facts.FactPosition;
import rootcast.ledger.OrderLine;
import rootcast.site.House;

/**
 * What the tables have from one position to another.
 *
 * @param to      the position
 * @param now     when they were read
 * @param setup   as it is now, if any of it was changed
 * @param hours   that readings made or changed, as they are stored now
 * @param orders  that were placed or released, as they are now
 * @param batches that have new entries, with all of them
 * @param shipped trays that have left so far for the promises those entries speak of
 */
record Facts(
        FactPosition to,
        Instant now,
        @Nullable Setup setup,
        List<Readings.Hour> hours,
        List<Order> orders,
        List<RecordedBatch> batches,
        Map<OrderLine, Integer> shipped) {

    /** Everything that people set up. */
    record Setup(SitesSnapshot sites, CatalogueSnapshot catalogue, List<House> houses, HousePlans plans) {}

    /** Nothing but time has passed. */
    static Facts none(FactPosition at, Instant now) {
        return new Facts(at, now, null, List.of(), List.of(), List.of(), Map.of());
    }

    Set<String> measuredHouses() {
        return hours.stream().map(Readings.Hour::house).collect(Collectors.toSet());
    }
}
