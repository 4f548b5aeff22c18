package rootcast.app.climate.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Consumer;
import rootcast.app.climate.HouseReading;
import rootcast.climate.HourlySeries;
import rootcast.climate.Quantity;
import rootcast.ledger.LedgerPosition;

/** Readings and their hourly sums as stored. */
@ApplicationScoped
@Transactional
public class Readings {

    @Inject
    Rows rows;

    @Inject
    Hours hours;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<ReadingRow, ReadingRow.Id> {}

    @ApplicationScoped
    static class Hours implements PanacheRepositoryBase<ReadingHourRow, ReadingHourRow.Id> {}

    /** One stored hour. */
    public record Hour(String house, Quantity quantity, Instant hourStart, long totalMicroC, int readings) {}

    /** What is stored for a house and quantity from one instant to another, both inclusive. */
    public Map<Instant, Double> stored(String house, Quantity quantity, Instant fromInclusive, Instant toInclusive) {
        Map<Instant, Double> stored = new HashMap<>();
        rows.getEntityManager()
                .createQuery(
                        "select r.id.measuredAt, r.readingValue from ReadingRow r"
                                + " where r.id.house = ?1 and r.id.quantity = ?2 and r.id.measuredAt between ?3 and ?4",
                        Object[].class)
                .setParameter(1, house)
                .setParameter(2, quantity.wireName())
                .setParameter(3, fromInclusive)
                .setParameter(4, toInclusive)
                .getResultList()
                .forEach(row -> stored.put((Instant) row[0], (Double) row[1]));
        return stored;
    }

    /** Adds readings that are not stored yet, and adds them to their hours. */
    public void add(List<HouseReading> added, LedgerPosition position, Instant recordedAt) {
        Map<ReadingHourRow.Id, ReadingHourRow> touched = new HashMap<>();
        for (HouseReading reading : added) {
            ReadingRow row = new ReadingRow();
            row.id = new ReadingRow.Id(reading.house(), reading.quantity().wireName(), reading.at());
            row.readingValue = reading.celsius();
            row.recordedAt = recordedAt;
            row.positionNo = position.value();
            rows.persist(row);
            ReadingHourRow.Id hour = new ReadingHourRow.Id(
                    reading.house(),
                    reading.quantity().wireName(),
                    HourlySeries.startOf(HourlySeries.hourOf(reading.at())));
            ReadingHourRow sum = touched.computeIfAbsent(hour, this::hourRow);
            sum.totalMicro += HourlySeries.microC(reading.celsius());
            sum.readings++;
        }
    }

    private ReadingHourRow hourRow(ReadingHourRow.Id id) {
        ReadingHourRow row = hours.findById(id);
        if (row == null) {
            row = new ReadingHourRow();
            row.id = id;
            hours.persist(row);
        }
        return row;
    }

    public void eachHour(Consumer<Hour> taken) {
        hours.getEntityManager()
                .createQuery(
                        "select h.id.house, h.id.quantity, h.id.hourStart, h.totalMicro, h.readings"
                                + " from ReadingHourRow h order by h.id.house, h.id.quantity, h.id.hourStart",
                        Object[].class)
                .getResultStream()
                .forEach(row -> taken.accept(new Hour(
                        (String) row[0],
                        Quantity.ofWireName((String) row[1]).orElseThrow(),
                        (Instant) row[2],
                        (Long) row[3],
                        (Integer) row[4])));
    }

    /** Readings stored between two positions. */
    public List<HouseReading> between(LedgerPosition afterExclusive, LedgerPosition upToInclusive) {
        return rows.list("positionNo > ?1 and positionNo <= ?2", afterExclusive.value(), upToInclusive.value()).stream()
                .map(Readings::reading)
                .toList();
    }

    /** Readings recorded after an instant. */
    public List<HouseReading> recordedAfter(Instant instant) {
        return rows.list("recordedAt > ?1", instant).stream()
                .map(Readings::reading)
                .toList();
    }

    /** The newest reading of a house and quantity. */
    public Optional<HouseReading> newest(String house, Quantity quantity) {
        return rows.find("id.house = ?1 and id.quantity = ?2 order by id.measuredAt desc", house, quantity.wireName())
                .firstResultOptional()
                .map(Readings::reading);
    }

    private static HouseReading reading(ReadingRow row) {
        return new HouseReading(
                row.id.house(),
                Quantity.ofWireName(row.id.quantity()).orElseThrow(),
                row.id.measuredAt(),
                row.readingValue);
    }
}
