package rootcast.saying;

import java.util.function.Supplier;

/** A value that cannot be meant: which field, and what is wrong with it. */
public final class FaultyValue extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    private final String field;
    private final transient Saying fault;

    /** @param field as it is sent, with the path inside of what was being made */
    public FaultyValue(String field, Fault fault, Object... values) {
        this(field, Saying.of(fault, values));
    }

    private FaultyValue(String field, Saying fault) {
        super(field + " " + fault.english());
        this.field = field;
        this.fault = fault;
    }

    public String field() {
        return field;
    }

    public Saying fault() {
        return fault;
    }

    /** Makes a part of something larger: what is wrong in it is told with the path to it. */
    public static <T> T within(String path, Supplier<T> part) {
        try {
            return part.get();
        } catch (FaultyValue wrong) {
            throw new FaultyValue(path + "." + wrong.field, wrong.fault);
        }
    }
}
