package rootcast.ledger;

import java.util.List;
import java.util.Optional;

/**
 * Where entries are kept. There is no way to change or remove one.
 *
 * <p>An implementation writes an entry with its postings whole or not at all, gives positions in the order in which
 * entries become visible, and keeps what it acknowledged through a crash.
 */
public interface Ledger {

    Optional<Batch> batch(String id);

    /** Every entry of the batch, in order of position. */
    List<Entry> entriesOf(String batch);

    /** Writes a new batch; its {@code stick} entry follows. */
    void open(Batch batch);

    void append(Entry entry, List<Posting> postings);
}
