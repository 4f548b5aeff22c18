package rootcast.facts;

/**
 * Place of a fact in the one sequence of all facts. Greater means recorded later; numbers may be missing.
 *
 * @param value 1 or more; 0 stands for "before the first fact"
 */
public record FactPosition(long value) implements Comparable<FactPosition> {

    public static final FactPosition START = new FactPosition(0);

    @Override
    public int compareTo(FactPosition other) {
        return Long.compare(value, other.value);
    }
}
