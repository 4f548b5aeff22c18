package rootcast.app.board;

import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import rootcast.board.BoardRow;

/** A row and, once somebody has asked for it, what it looks like when sent: a board is read far more often than it changes. */
public final class ShownRow {

    private final BoardRow row;
    private volatile byte @Nullable [] written;

    public ShownRow(BoardRow row) {
        this.row = row;
    }

    public BoardRow row() {
        return row;
    }

    /** The row as {@code writer} writes it; the same writer every time. Not to be changed. */
    public byte[] written(Function<BoardRow, byte[]> writer) {
        byte[] before = written;
        if (before == null) {
            before = writer.apply(row);
            written = before;
        }
        return before;
    }
}
