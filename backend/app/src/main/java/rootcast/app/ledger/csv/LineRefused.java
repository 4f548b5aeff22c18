package rootcast.app.ledger.csv;

import org.jspecify.annotations.Nullable;

/** Why one line of a table of batches is not taken. */
final class LineRefused extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final @Nullable String column;
    private final String kind;
    private final @Nullable String asked;

    LineRefused(@Nullable String column, String kind, @Nullable String asked, String reason) {
        super(reason, null, false, false);
        this.column = column;
        this.kind = kind;
        this.asked = asked;
    }

    static LineRefused missing(String column) {
        return new LineRefused(column, "missing", null, "is empty");
    }

    @Nullable
    String column() {
        return column;
    }

    String kind() {
        return kind;
    }

    @Nullable
    String asked() {
        return asked;
    }
}
