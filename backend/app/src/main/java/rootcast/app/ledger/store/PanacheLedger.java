package rootcast.app.ledger.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import java.util.stream.Collectors;
import rootcast.app.crop.store.Catalogue;
import rootcast.crop.TrayFormat;
import rootcast.facts.FactPosition;
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

    /** Every batch there ever was, by id. */
    public Map<String, Batch> allBatches() {
        Map<String, TrayFormat> formats =
                catalogue.trayFormats().stream().collect(Collectors.toMap(TrayFormat::code, Function.identity()));
        return batches.listAll().stream()
                .map(row -> mapper.batch(row, formats.get(row.trayFormat)))
                .collect(Collectors.toMap(Batch::id, Function.identity()));
    }

    @Override
    public List<Entry> entriesOf(String batch) {
        return entries.list("batch = ?1 order by positionNo", batch).stream()
                .map(mapper::entry)
                .toList();
    }

    /** Entries of any batch between two positions, oldest first. */
    public List<Entry> entriesBetween(FactPosition afterExclusive, FactPosition upToInclusive) {
        return entries
                .list(
                        "positionNo > ?1 and positionNo <= ?2 order by positionNo",
                        afterExclusive.value(),
                        upToInclusive.value())
                .stream()
                .map(mapper::entry)
                .toList();
    }

    /** Every entry of every batch, by batch. */
    public Map<String, List<Entry>> allEntries() {
        return entries.list("order by positionNo").stream()
                .map(mapper::entry)
                .collect(Collectors.groupingBy(Entry::batch));
    }

    /** Every batch of these varieties with its entries folded. */
    public List<BatchFold> foldsOf(Collection<String> varieties) {
        if (varieties.isEmpty()) {
            return List.of();
        }
        Map<String, TrayFormat> formats =
                catalogue.trayFormats().stream().collect(Collectors.toMap(TrayFormat::code, Function.identity()));
        Map<String, List<Entry>> byBatch = entries
                .list("batch in (select b.id from BatchRow b where b.variety in ?1) order by positionNo", varieties)
                .stream()
                .map(mapper::entry)
                .collect(Collectors.groupingBy(Entry::batch));
        return batches.list("variety in ?1 order by id", varieties).stream()
                .map(row -> BatchFold.of(mapper.batch(row, formats.get(row.trayFormat)), byBatch.get(row.id)))
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
