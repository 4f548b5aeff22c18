package rootcast.app.ledger.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.ArrayList;
import java.util.Collection;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.ledger.RecordedBatch;
import rootcast.availability.Cell;
import rootcast.crop.TrayFormat;
import rootcast.facts.FactPosition;
import rootcast.ledger.Account;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.Entry;
import rootcast.ledger.Ledger;
import rootcast.ledger.OrderLine;
import rootcast.ledger.Posting;

/** The ledger in the database. Rows are inserted and read; nothing else is offered, and the database refuses it. */
@ApplicationScoped
@Transactional
public class PanacheLedger implements Ledger {

    private static final int READ_AT_ONCE = 500;

    @Inject
    Batches batches;

    @Inject
    Entries entries;

    @Inject
    Postings postings;

    @Inject
    Catalogue catalogue;

    @Inject
    EntryMapper mapper;

    @ApplicationScoped
    static class Batches implements PanacheRepositoryBase<BatchRow, String> {}

    @ApplicationScoped
    static class Entries implements PanacheRepositoryBase<EntryRow, Long> {}

    @ApplicationScoped
    static class Postings implements PanacheRepositoryBase<PostingRow, PostingRow.Id> {}

    @Override
    public Optional<Batch> batch(String id) {
        return batches.findByIdOptional(id)
                .map(row ->
                        mapper.batch(row, catalogue.trayFormat(row.trayFormat).orElseThrow()));
    }

    @Override
    public List<Entry> entriesOf(String batch) {
        return entries.list("batch = ?1 order by positionNo", batch).stream()
                .map(mapper::entry)
                .toList();
    }

    /** Batches with an entry between two positions. */
    public Set<String> touchedBetween(FactPosition afterExclusive, FactPosition upToInclusive) {
        return new HashSet<>(entries.getEntityManager()
                .createQuery(
                        "select distinct e.batch from EntryRow e where e.positionNo > ?1 and e.positionNo <= ?2",
                        String.class)
                .setParameter(1, afterExclusive.value())
                .setParameter(2, upToInclusive.value())
                .getResultList());
    }

    /**
     * Batches whose postings leave no plant alive.
     *
     * @param site code, or null for all; the same for the variety
     */
    public List<String> finished(@Nullable String site, @Nullable String variety) {
        return entries.getEntityManager()
                .createQuery(
                        "select b.id from BatchRow b where (?1 is null or b.site = ?1) and (?2 is null or b.variety = ?2)"
                                + " and (select sum(p.plants) from PostingRow p where p.batch = b.id and p.account = ?3) = 0",
                        String.class)
                .setParameter(1, site)
                .setParameter(2, variety)
                .setParameter(3, Account.Kind.ALIVE.name())
                .getResultList();
    }

    /** Every batch there ever was. */
    public List<String> ids() {
        return entries.getEntityManager()
                .createQuery("select b.id from BatchRow b", String.class)
                .getResultList();
    }

    /** Every batch there ever was at some sites. */
    public Set<String> idsAt(Collection<String> sites) {
        return new HashSet<>(entries.getEntityManager()
                .createQuery("select b.id from BatchRow b where b.site in ?1", String.class)
                .setParameter(1, sites)
                .getResultList());
    }

    /** The newest entry of any batch that was entered ready at some time; the start if there is none. */
    public FactPosition newestOfReady() {
        Long newest = entries.getEntityManager()
                .createQuery(
                        "select max(e.positionNo) from EntryRow e where e.batch in"
                                + " (select r.batch from EntryRow r where r.kind = 'stage' and r.stage = 'READY')",
                        Long.class)
                .getSingleResult();
        return newest == null ? FactPosition.START : new FactPosition(newest);
    }

    /** The same of batches of some varieties alone. */
    public FactPosition newestOfReady(Collection<String> varieties) {
        Long newest = entries.getEntityManager()
                .createQuery(
                        "select max(e.positionNo) from EntryRow e where e.batch in"
                                + " (select r.batch from EntryRow r where r.kind = 'stage' and r.stage = 'READY')"
                                + " and e.batch in (select b.id from BatchRow b where b.variety in ?1)",
                        Long.class)
                .setParameter(1, varieties)
                .getSingleResult();
        return newest == null ? FactPosition.START : new FactPosition(newest);
    }

    /** Every batch there ever was of a cell. */
    public List<String> idsOf(Cell cell) {
        return entries.getEntityManager()
                .createQuery(
                        "select b.id from BatchRow b where b.variety = ?1 and b.trayFormat = ?2 and b.site = ?3",
                        String.class)
                .setParameter(1, cell.variety())
                .setParameter(2, cell.trayFormat())
                .setParameter(3, cell.site())
                .getResultList();
    }

    /** Batches whose postings leave plants alive. */
    public Set<String> withPlantsAlive() {
        return new HashSet<>(entries.getEntityManager()
                .createQuery(
                        "select p.batch from PostingRow p where p.account = ?1 group by p.batch having sum(p.plants) <> 0",
                        String.class)
                .setParameter(1, Account.Kind.ALIVE.name())
                .getResultList());
    }

    /**
     * Batches with all of their entries, in order of position. An entry that cannot be read spoils its own batch only.
     *
     * @param ids of batches that there are
     */
    public List<RecordedBatch> recorded(Collection<String> ids) {
        Map<String, TrayFormat> formats =
                catalogue.trayFormats().stream().collect(Collectors.toMap(TrayFormat::code, Function.identity()));
        List<RecordedBatch> recorded = new ArrayList<>(ids.size());
        List<String> ordered = ids.stream().sorted().toList();
        for (int from = 0; from < ordered.size(); from += READ_AT_ONCE) {
            List<String> some = ordered.subList(from, Math.min(ordered.size(), from + READ_AT_ONCE));
            Map<String, List<EntryRow>> rows = entries.list("batch in ?1 order by positionNo", some).stream()
                    .collect(Collectors.groupingBy(row -> row.batch));
            batches.list("id in ?1", some)
                    .forEach(row -> recorded.add(recorded(
                            mapper.batch(row, formats.get(row.trayFormat)), rows.getOrDefault(row.id, List.of()))));
            entries.getEntityManager().clear(); // read only: nothing to keep of so many rows
        }
        return recorded;
    }

    private RecordedBatch recorded(Batch batch, List<EntryRow> rows) {
        FactPosition newest =
                rows.isEmpty() ? FactPosition.START : new FactPosition(rows.get(rows.size() - 1).positionNo);
        try {
            return new RecordedBatch(
                    batch, newest, rows.stream().map(mapper::entry).toList(), null);
        } catch (RuntimeException unreadable) {
            return new RecordedBatch(batch, newest, null, "an entry cannot be read: " + unreadable.getMessage());
        }
    }

    /** Trays of entries in force that left for promises, by promise. */
    public Map<OrderLine, Integer> traysShipped() {
        Map<OrderLine, Integer> shipped = new HashMap<>();
        entries.getEntityManager()
                .createQuery(
                        "select e.orderId, e.orderLine, sum(e.trays) from EntryRow e where e.orderId is not null"
                                + " and not exists (select 1 from EntryRow r where r.reverses = e.id)"
                                + " group by e.orderId, e.orderLine",
                        Object[].class)
                .getResultList()
                .forEach(row ->
                        shipped.put(new OrderLine((UUID) row[0], (Integer) row[1]), Math.toIntExact((Long) row[2])));
        return shipped;
    }

    /** Every batch of these varieties with its entries folded; one that cannot be read, or was stuck by mistake, is left out. */
    public List<BatchFold> foldsOf(Collection<String> varieties) {
        List<String> ids = varieties.isEmpty()
                ? List.of()
                : batches.list("variety in ?1", varieties).stream()
                        .map(row -> row.id)
                        .toList();
        return recorded(ids).stream()
                .filter(recorded ->
                        recorded.entries() != null && !recorded.entries().isEmpty())
                .map(recorded -> BatchFold.of(recorded.batch(), recorded.entries()))
                .filter(fold -> fold.state().isStuck())
                .toList();
    }

    /** Postings of the batch's entries by the position of their entry. */
    public Map<Long, List<Posting>> postingsOf(String batch) {
        return postings.list("batch = ?1 order by id.positionNo, id.seq", batch).stream()
                .collect(Collectors.groupingBy(
                        row -> row.id.positionNo(), Collectors.mapping(mapper::posting, Collectors.toList())));
    }

    /** How many batches have an id that begins so; numbers the next one. */
    public long countIdsBeginning(String prefix) {
        return batches.count("id like ?1 escape '!'", prefix.replace("_", "!_") + "%");
    }

    /** Trays of entries in force that left for the promise. */
    public int traysShippedFor(OrderLine line) {
        Long trays = entries.getEntityManager()
                .createQuery(
                        "select sum(e.trays) from EntryRow e where e.orderId = ?1 and e.orderLine = ?2"
                                + " and not exists (select 1 from EntryRow r where r.reverses = e.id)",
                        Long.class)
                .setParameter(1, line.order())
                .setParameter(2, line.line())
                .getSingleResult();
        return trays == null ? 0 : Math.toIntExact(trays);
    }

    @Override
    public void open(Batch batch) {
        batches.persist(mapper.row(batch));
        batches.flush();
    }

    @Override
    public void append(Entry entry, List<Posting> added) {
        entries.persist(mapper.row(entry));
        entries.flush();
        int seq = 0;
        for (Posting posting : added) {
            postings.persist(
                    mapper.row(posting, new PostingRow.Id(entry.position().value(), seq++), entry.batch()));
        }
    }
}
