package rootcast.app.climate.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.stream.Collectors;
import rootcast.app.climate.FlagOfHouse;
import rootcast.app.climate.HouseQuantity;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.SetAside;
import rootcast.climate.FlagKind;
import rootcast.climate.HourlySeries;
import rootcast.climate.QualityFlag;
import rootcast.climate.Quantity;
import rootcast.facts.FactPosition;

/** Flags, readings set aside and what people said of them, as stored. */
@ApplicationScoped
@Transactional
public class Flags {

    @Inject
    FlagRows flagRows;

    @Inject
    AsideRows asideRows;

    @Inject
    OverrideRows overrideRows;

    @ApplicationScoped
    static class FlagRows implements PanacheRepositoryBase<ReadingFlagRow, UUID> {}

    @ApplicationScoped
    static class AsideRows implements PanacheRepositoryBase<ReadingAsideRow, UUID> {}

    @ApplicationScoped
    static class OverrideRows implements PanacheRepositoryBase<FlagOverrideRow, FlagOverrideRow.Id> {}

    /**
     * A flag as it is shown.
     *
     * @param setAside whether its reading is outside of the series
     */
    public record Shown(UUID id, HouseQuantity of, QualityFlag flag, boolean setAside) {}

    /** A person's last word on a flag. */
    public record Word(boolean overridden, String reason, Instant recordedAt) {}

    public Map<Long, List<QualityFlag>> byHour(HouseQuantity of, Instant fromInclusive, Instant untilExclusive) {
        return flagRows
                .list(
                        "house = ?1 and quantity = ?2 and flaggedAt >= ?3 and flaggedAt < ?4",
                        of.house(),
                        of.quantity().wireName(),
                        fromInclusive,
                        untilExclusive)
                .stream()
                .map(Flags::flag)
                .sorted(QualityFlag.ORDER)
                .collect(Collectors.groupingBy(flag -> HourlySeries.hourOf(flag.at())));
    }

    /** When a reading of each house and quantity was last left out, of those since an instant. */
    public Map<HouseQuantity, Instant> lastLeftOut(Collection<String> houses, Instant fromInclusive) {
        Map<HouseQuantity, Instant> last = new HashMap<>();
        flagRows.getEntityManager()
                .createQuery(
                        "select f.house, f.quantity, max(f.flaggedAt) from ReadingFlagRow f where f.house in ?1"
                                + " and f.leftOut = true and f.flaggedAt >= ?2 group by f.house, f.quantity",
                        Object[].class)
                .setParameter(1, houses)
                .setParameter(2, fromInclusive)
                .getResultList()
                .forEach(row -> last.put(of((String) row[0], (String) row[1]), (Instant) row[2]));
        return last;
    }

    public void replace(List<FlagOfHouse> dropped, List<FlagOfHouse> raised) {
        for (FlagOfHouse gone : dropped) {
            flagRows.deleteById(gone.id());
        }
        if (!dropped.isEmpty()) {
            flagRows.flush();
        }
        for (FlagOfHouse each : raised) {
            flagRows.persist(row(each));
        }
    }

    /** Keeps readings outside of the series, each once. */
    public void setAside(List<SetAside> readings, FactPosition position) {
        Map<UUID, SetAside> once = new LinkedHashMap<>();
        readings.forEach(each -> once.putIfAbsent(each.id(), each));
        once.forEach((id, each) -> {
            if (asideRows.findById(id) == null) {
                asideRows.persist(row(id, each, position));
            }
        });
    }

    /** What is to be shown of a house and quantity, the oldest first, the newest {@code most} if there are more. */
    public List<Shown> shown(HouseQuantity of, Instant fromInclusive, Instant untilExclusive, int most) {
        List<Shown> shown = new ArrayList<>();
        flagRows.find(
                        "house = ?1 and quantity = ?2 and flaggedAt >= ?3 and flaggedAt < ?4 order by flaggedAt desc",
                        of.house(),
                        of.quantity().wireName(),
                        fromInclusive,
                        untilExclusive)
                .range(0, most - 1)
                .list()
                .forEach(row -> shown.add(new Shown(row.id, of, flag(row), false)));
        asideRows
                .find(
                        "house = ?1 and quantity = ?2 and measuredAt >= ?3 and measuredAt < ?4 order by measuredAt desc",
                        of.house(),
                        of.quantity().wireName(),
                        fromInclusive,
                        untilExclusive)
                .range(0, most - 1)
                .list()
                .forEach(row -> shown.add(new Shown(row.id, of, flag(row), true)));
        shown.sort((a, b) -> QualityFlag.ORDER.compare(a.flag(), b.flag()));
        return shown.subList(Math.max(0, shown.size() - most), shown.size());
    }

    public Optional<Shown> one(UUID id) {
        ReadingFlagRow row = flagRows.findById(id);
        if (row != null) {
            return Optional.of(new Shown(id, of(row.house, row.quantity), flag(row), false));
        }
        ReadingAsideRow aside = asideRows.findById(id);
        return aside == null
                ? Optional.empty()
                : Optional.of(new Shown(id, of(aside.house, aside.quantity), flag(aside), true));
    }

    public void say(Shown of, Word word, FactPosition position) {
        FlagOverrideRow row = new FlagOverrideRow();
        row.id = new FlagOverrideRow.Id(position.value(), of.id());
        row.house = of.of().house();
        row.quantity = of.of().quantity().wireName();
        row.sensor = of.flag().sensor();
        row.kind = of.flag().kind().wireName();
        row.flaggedAt = of.flag().at();
        row.overridden = word.overridden();
        row.reason = word.reason();
        row.recordedAt = word.recordedAt();
        overrideRows.persist(row);
        overrideRows.flush();
    }

    /** The last word on each flag that anything was said of. */
    public Map<UUID, Word> words(HouseQuantity of, Instant fromInclusive, Instant untilExclusive) {
        Map<UUID, Word> words = new HashMap<>();
        said(of, fromInclusive, untilExclusive, Readings.NEVER)
                .forEach(row -> words.put(row.id.flagId(), new Word(row.overridden, row.reason, row.recordedAt)));
        return words;
    }

    /** Flags in force as overridden. */
    public Set<QualityFlag.Key> overridden(HouseQuantity of, Instant fromInclusive, Instant untilExclusive) {
        return overridden(of, fromInclusive, untilExclusive, Readings.NEVER);
    }

    /** Flags that were overridden by an instant. */
    public Set<QualityFlag.Key> overridden(
            HouseQuantity of, Instant fromInclusive, Instant untilExclusive, Instant saidBy) {
        Map<UUID, FlagOverrideRow> last = new HashMap<>();
        said(of, fromInclusive, untilExclusive, saidBy).forEach(row -> last.put(row.id.flagId(), row));
        return last.values().stream()
                .filter(row -> row.overridden)
                .map(row -> new QualityFlag.Key(kind(row.kind), row.sensor, row.flaggedAt))
                .collect(Collectors.toSet());
    }

    /** Readings set aside that a person brought in; of two at one moment the one that was spoken of last. */
    public List<HouseReading> broughtIn(HouseQuantity of, Instant fromInclusive, Instant untilExclusive) {
        return broughtIn(of, fromInclusive, untilExclusive, Readings.NEVER);
    }

    /** Readings that were brought in by an instant. */
    public List<HouseReading> broughtIn(
            HouseQuantity of, Instant fromInclusive, Instant untilExclusive, Instant saidBy) {
        List<HouseReading> readings = new ArrayList<>();
        Map<UUID, FlagOverrideRow> last = new LinkedHashMap<>();
        said(of, fromInclusive, untilExclusive, saidBy).forEach(row -> {
            last.remove(row.id.flagId());
            last.put(row.id.flagId(), row);
        });
        last.values().stream()
                .filter(row -> row.overridden)
                .map(row -> asideRows.findById(row.id.flagId()))
                .filter(java.util.Objects::nonNull)
                .forEach(aside -> readings.add(reading(aside)));
        return readings;
    }

    /** Moments of flags that something was said of after an instant. */
    public List<Instant> spokenOfAfter(HouseQuantity of, Instant instant) {
        return overrideRows
                .list(
                        "house = ?1 and quantity = ?2 and recordedAt > ?3",
                        of.house(),
                        of.quantity().wireName(),
                        instant)
                .stream()
                .map(row -> row.flaggedAt)
                .toList();
    }

    private List<FlagOverrideRow> said(
            HouseQuantity of, Instant fromInclusive, Instant untilExclusive, Instant saidBy) {
        return overrideRows.list(
                "house = ?1 and quantity = ?2 and flaggedAt >= ?3 and flaggedAt < ?4 and recordedAt <= ?5"
                        + " order by id.positionNo",
                of.house(),
                of.quantity().wireName(),
                fromInclusive,
                untilExclusive,
                saidBy);
    }

    private static HouseQuantity of(String house, String quantity) {
        return new HouseQuantity(house, Quantity.ofWireName(quantity).orElseThrow());
    }

    private static FlagKind kind(String wireName) {
        return FlagKind.ofWireName(wireName).orElseThrow();
    }

    private static HouseReading reading(ReadingAsideRow row) {
        HouseQuantity of = of(row.house, row.quantity);
        return new HouseReading(
                row.house, of.quantity(), row.sensor, row.measuredAt, row.readingValue, row.sentValue, row.sentUnit);
    }

    private static QualityFlag flag(ReadingFlagRow row) {
        return new QualityFlag(
                kind(row.kind),
                row.sensor,
                row.flaggedAt,
                row.shownValue,
                row.expected == null ? Double.NaN : row.expected,
                row.limitValue,
                row.leftOut);
    }

    private static QualityFlag flag(ReadingAsideRow row) {
        return new QualityFlag(
                kind(row.kind),
                row.sensor,
                row.measuredAt,
                row.readingValue,
                row.expected == null ? Double.NaN : row.expected,
                0,
                true);
    }

    private static ReadingFlagRow row(FlagOfHouse each) {
        QualityFlag flag = each.flag();
        ReadingFlagRow row = new ReadingFlagRow();
        row.id = each.id();
        row.house = each.of().house();
        row.quantity = each.of().quantity().wireName();
        row.sensor = flag.sensor();
        row.kind = flag.kind().wireName();
        row.flaggedAt = flag.at();
        row.shownValue = flag.value();
        row.expected = Double.isNaN(flag.expected()) ? null : flag.expected();
        row.limitValue = flag.limit();
        row.leftOut = flag.leftOut();
        return row;
    }

    private static ReadingAsideRow row(UUID id, SetAside aside, FactPosition position) {
        HouseReading reading = aside.reading();
        ReadingAsideRow row = new ReadingAsideRow();
        row.id = id;
        row.house = reading.house();
        row.quantity = reading.quantity().wireName();
        row.sensor = reading.sensor();
        row.kind = aside.kind().wireName();
        row.measuredAt = reading.at();
        row.readingValue = reading.value();
        row.sentValue = reading.sent();
        row.sentUnit = reading.sentUnit();
        row.expected = aside.expected();
        row.recordedAt = aside.recordedAt();
        row.positionNo = position.value();
        return row;
    }
}
