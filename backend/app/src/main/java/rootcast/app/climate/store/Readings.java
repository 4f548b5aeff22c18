package rootcast.app.climate.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;
import java.util.Collection;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.function.Consumer;
import java.util.stream.Collectors;
import org.hibernate.Session;
import rootcast.app.climate.HouseQuantity;
import rootcast.app.climate.HouseReading;
import rootcast.climate.Quantity;
import rootcast.facts.FactPosition;

/** Readings and their hourly sums as stored. */
@ApplicationScoped
@Transactional
public class Readings {

    /** Later than any reading. */
    public static final Instant NEVER = Instant.parse("9000-01-01T00:00:00Z");

    /**
     * Hours are few and lead to the readings; the order names the whole key so that either database walks it backwards.
     * Without the offsets PostgreSQL asks the inner questions again for every reading of the join: 9 s, not 55 ms.
     */
    private static final String NEWEST_OF_EACH = "select r.* from (select s.house, s.quantity,"
            + " (select n.measured_at from reading n where n.house = s.house and n.quantity = s.quantity"
            + " and n.measured_at >= s.hour_start order by n.house desc, n.quantity desc, n.measured_at desc"
            + " fetch first 1 row only) as newest"
            + " from (select h.code as house, q.quantity as quantity, (select k.hour_start from reading_hour k"
            + " where k.house = h.code and k.quantity = q.quantity"
            + " order by k.house desc, k.quantity desc, k.hour_start desc fetch first 1 row only) as hour_start"
            + " from house h cross join (values "
            + Arrays.stream(Quantity.values())
                    .map(quantity -> "('" + quantity.wireName() + "')")
                    .collect(Collectors.joining(", "))
            + ") as q (quantity) where h.code in (?1) offset 0 rows) s offset 0 rows) w"
            + " join reading r on r.house = w.house and r.quantity = w.quantity and r.measured_at = w.newest";

    @Inject
    Rows rows;

    @Inject
    EntityManager database;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<ReadingRow, ReadingRow.Id> {}

    /**
     * One hour.
     *
     * @param leftOut  readings that are there but not in the sum
     * @param settled  its readings were purged, the sum stays
     * @param isStored whether there is a row of it already
     */
    public record Hour(
            String house,
            Quantity quantity,
            Instant hourStart,
            long totalMicro,
            int readings,
            int leftOut,
            boolean settled,
            boolean isStored) {}

    /** Takes one reading. */
    public interface Taker {
        void take(String sensor, Instant at, double value);
    }

    /** What is stored of a house and quantity. */
    public void eachOf(HouseQuantity of, Instant fromInclusive, Instant untilExclusive, Taker taker) {
        eachOf(of, fromInclusive, untilExclusive, NEVER, taker);
    }

    /** What was stored of a house and quantity by an instant. */
    public void eachOf(
            HouseQuantity of, Instant fromInclusive, Instant untilExclusive, Instant recordedBy, Taker taker) {
        database.createQuery(
                        "select r.id.sensor, r.id.measuredAt, r.readingValue from ReadingRow r where r.id.house = ?1"
                                + " and r.id.quantity = ?2 and r.id.measuredAt >= ?3 and r.id.measuredAt < ?4"
                                + " and r.recordedAt <= ?5 order by r.id.measuredAt",
                        Object[].class)
                .setParameter(1, of.house())
                .setParameter(2, of.quantity().wireName())
                .setParameter(3, fromInclusive)
                .setParameter(4, untilExclusive)
                .setParameter(5, recordedBy)
                .getResultList()
                .forEach(row -> taker.take((String) row[0], (Instant) row[1], (Double) row[2]));
    }

    /** Adds readings that are not stored yet; those measured before {@code lateBefore} are marked late. */
    public void insert(List<HouseReading> added, FactPosition position, Instant recordedAt, Instant lateBefore) {
        database.unwrap(Session.class)
                .doWork(connection ->
                        ReadingStatements.insert(connection, added, position.value(), recordedAt, lateBefore));
    }

    public void putHours(List<Hour> hours, FactPosition position) {
        if (!hours.isEmpty()) {
            database.unwrap(Session.class)
                    .doWork(connection -> ReadingStatements.putHours(connection, hours, position.value()));
        }
    }

    public void eachHour(Consumer<Hour> taken) {
        database.createQuery(
                        "select h from ReadingHourRow h order by h.id.house, h.id.quantity, h.id.hourStart",
                        ReadingHourRow.class)
                .getResultStream()
                .forEach(row -> {
                    taken.accept(hour(row));
                    database.detach(row);
                });
    }

    public void eachHourOf(HouseQuantity of, Instant fromInclusive, Instant untilExclusive, Consumer<Hour> taken) {
        database.createQuery(
                        "select h.id.hourStart, h.totalMicro, h.readings, h.leftOut, h.settled from ReadingHourRow h"
                                + " where h.id.house = ?1 and h.id.quantity = ?2"
                                + " and h.id.hourStart >= ?3 and h.id.hourStart < ?4",
                        Object[].class)
                .setParameter(1, of.house())
                .setParameter(2, of.quantity().wireName())
                .setParameter(3, fromInclusive)
                .setParameter(4, untilExclusive)
                .getResultList()
                .forEach(row -> taken.accept(new Hour(
                        of.house(),
                        of.quantity(),
                        (Instant) row[0],
                        (Long) row[1],
                        (Integer) row[2],
                        (Integer) row[3],
                        (Boolean) row[4],
                        true)));
    }

    /** Hours that readings between two positions made or changed. */
    public List<Hour> between(FactPosition afterExclusive, FactPosition upToInclusive) {
        return database
                .createQuery(
                        "select h.id.house, h.id.quantity, h.id.hourStart, h.totalMicro, h.readings, h.leftOut, h.settled"
                                + " from ReadingHourRow h where h.positionNo > ?1 and h.positionNo <= ?2",
                        Object[].class)
                .setParameter(1, afterExclusive.value())
                .setParameter(2, upToInclusive.value())
                .getResultList()
                .stream()
                .map(row -> new Hour(
                        (String) row[0],
                        Quantity.ofWireName((String) row[1]).orElseThrow(),
                        (Instant) row[2],
                        (Long) row[3],
                        (Integer) row[4],
                        (Integer) row[5],
                        (Boolean) row[6],
                        true))
                .toList();
    }

    /** Houses and quantities that were written to between two positions, also by overriding a flag. */
    public Set<HouseQuantity> seriesWrittenBetween(FactPosition afterExclusive, FactPosition upToInclusive) {
        Set<HouseQuantity> series = new HashSet<>();
        for (String query : List.of(
                "select distinct r.id.house, r.id.quantity from ReadingRow r where r.positionNo > ?1 and r.positionNo <= ?2",
                "select distinct o.house, o.quantity from FlagOverrideRow o"
                        + " where o.id.positionNo > ?1 and o.id.positionNo <= ?2")) {
            database.createQuery(query, Object[].class)
                    .setParameter(1, afterExclusive.value())
                    .setParameter(2, upToInclusive.value())
                    .getResultList()
                    .forEach(row -> series.add(new HouseQuantity(
                            (String) row[0],
                            Quantity.ofWireName((String) row[1]).orElseThrow())));
        }
        return series;
    }

    /** When the readings were measured that were recorded after an instant. */
    public List<Instant> measuredButRecordedAfter(HouseQuantity of, Instant instant) {
        return database.createQuery(
                        "select distinct r.id.measuredAt from ReadingRow r where r.id.house = ?1 and r.id.quantity = ?2"
                                + " and r.recordedAt > ?3",
                        Instant.class)
                .setParameter(1, of.house())
                .setParameter(2, of.quantity().wireName())
                .setParameter(3, instant)
                .getResultList();
    }

    /** The newest readings of a house and quantity, the newest first. */
    public List<HouseReading> newest(String house, Quantity quantity, int most) {
        return rows
                .find("id.house = ?1 and id.quantity = ?2 order by id.measuredAt desc", house, quantity.wireName())
                .range(0, most - 1)
                .list()
                .stream()
                .map(Readings::reading)
                .toList();
    }

    /** The newest reading of each house and quantity: one look per series, however many readings there are. */
    public List<HouseReading> newestOfEach(Collection<String> houses) {
        if (houses.isEmpty()) {
            return List.of();
        }
        List<?> found = database.createNativeQuery(NEWEST_OF_EACH, ReadingRow.class)
                .setParameter(1, houses)
                .getResultList();
        return found.stream().map(row -> reading((ReadingRow) row)).toList();
    }

    public Optional<HouseReading> newestOf(HouseQuantity of, String sensor) {
        return rows.find(
                        "id.house = ?1 and id.quantity = ?2 and id.sensor = ?3 order by id.measuredAt desc",
                        of.house(),
                        of.quantity().wireName(),
                        sensor)
                .firstResultOptional()
                .map(Readings::reading);
    }

    public long numberOf(HouseQuantity of, String sensor, Instant fromInclusive) {
        return rows.count(
                "id.house = ?1 and id.quantity = ?2 and id.sensor = ?3 and id.measuredAt >= ?4",
                of.house(),
                of.quantity().wireName(),
                sensor,
                fromInclusive);
    }

    /** A sensor's readings, the oldest first. */
    public List<HouseReading> ofSensor(String sensor, Instant fromInclusive, Instant untilExclusive, int most) {
        return rows
                .find(
                        "id.sensor = ?1 and id.measuredAt >= ?2 and id.measuredAt < ?3 and id.house in"
                                + " (select s.house from SensorRow s where s.code = ?1) order by id.measuredAt",
                        sensor,
                        fromInclusive,
                        untilExclusive)
                .range(0, most - 1)
                .list()
                .stream()
                .map(Readings::reading)
                .toList();
    }

    /** How many readings of a sensor came late, and of when the first and the last of them are. */
    public record Late(String sensor, long readings, Instant first, Instant last) {}

    public List<Late> late(HouseQuantity of, Instant fromInclusive, Instant untilExclusive) {
        return database
                .createQuery(
                        "select r.id.sensor, count(r), min(r.id.measuredAt), max(r.id.measuredAt) from ReadingRow r"
                                + " where r.id.house = ?1 and r.id.quantity = ?2 and r.id.measuredAt >= ?3"
                                + " and r.id.measuredAt < ?4 and r.isLate = true group by r.id.sensor"
                                + " order by r.id.sensor",
                        Object[].class)
                .setParameter(1, of.house())
                .setParameter(2, of.quantity().wireName())
                .setParameter(3, fromInclusive)
                .setParameter(4, untilExclusive)
                .getResultList()
                .stream()
                .map(row -> new Late((String) row[0], (Long) row[1], (Instant) row[2], (Instant) row[3]))
                .toList();
    }

    public boolean isAnyRecordedBefore(Instant instant) {
        return rows.count("recordedAt < ?1", instant) > 0;
    }

    /**
     * Puts away the oldest raw readings recorded before an instant; their hours are settled and stay.
     *
     * @param about so many, and those recorded together with the last of them
     * @return readings purged
     */
    public int purge(Instant recordedBefore, int about) {
        List<Instant> last = database.createQuery(
                        "select r.recordedAt from ReadingRow r where r.recordedAt < ?1 order by r.recordedAt",
                        Instant.class)
                .setParameter(1, recordedBefore)
                .setFirstResult(about - 1)
                .setMaxResults(1)
                .getResultList();
        Instant until = last.isEmpty() ? recordedBefore : last.get(0).plus(1, ChronoUnit.MICROS);
        List<HouseReading> oldest = rows.list("recordedAt < ?1", until).stream()
                .map(Readings::reading)
                .toList();
        database.unwrap(Session.class).doWork(connection -> ReadingStatements.settle(connection, oldest));
        return Math.toIntExact(rows.delete("recordedAt < ?1", until));
    }

    private static Hour hour(ReadingHourRow row) {
        return new Hour(
                row.id.house(),
                Quantity.ofWireName(row.id.quantity()).orElseThrow(),
                row.id.hourStart(),
                row.totalMicro,
                row.readings,
                row.leftOut,
                row.settled,
                true);
    }

    private static HouseReading reading(ReadingRow row) {
        Quantity quantity = Quantity.ofWireName(row.id.quantity()).orElseThrow();
        return new HouseReading(
                row.id.house(),
                quantity,
                row.id.sensor(),
                row.id.measuredAt(),
                row.readingValue,
                row.sentValue == null ? row.readingValue : row.sentValue,
                row.sentUnit == null ? quantity.unit().ucum() : row.sentUnit);
    }
}
