package rootcast.ledger;

/**
 * Place of a fact in the one sequence of all facts. Greater means recorded later; numbers may be missing.
 *
 * @param value 1 or more; 0 stands for "before the first fact"
 */
public record LedgerPosition(long value) implements Comparable<LedgerPosition> {

    public static final LedgerPosition START = new LedgerPosition(0);

    @Override
    public int compareTo(LedgerPosition other) {
        return Long.compare(value, other.value);
    }
}
