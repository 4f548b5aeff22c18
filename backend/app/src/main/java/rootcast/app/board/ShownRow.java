package rootcast.app.board;

import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rootcast.app.outlook.FaultyBatch;
import rootcast.board.BoardRow;

/**
 * A row and, once somebody has asked for it, what it looks like when sent: a board is read far more often than it
 * changes.
 */
public final class ShownRow {

    private final BoardRow row;
    private final List<FaultyBatch> faulty;
    private volatile byte @Nullable [] written;

    public ShownRow(BoardRow row, List<FaultyBatch> faulty) {
        this.row = row;
        this.faulty = List.copyOf(faulty);
    }

    public BoardRow row() {
        return row;
    }

    /** Batches of the row that could not be computed: what they hold is in no figure of it. */
    public List<FaultyBatch> faulty() {
        return faulty;
    }

    /** The row as {@code writer} writes it; the same writer every time. Not to be changed. */
    public byte[] written(Function<ShownRow, byte[]> writer) {
        byte[] before = written;
        if (before == null) {
            before = writer.apply(this);
            written = before;
        }
        return before;
    }
}
