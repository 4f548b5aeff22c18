package rootcast.saying;

import java.util.function.Supplier;

/** A value that cannot be meant: which field, and what is wrong with it. */
public final class FaultyValue extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    private final String field;
    private final transient Object asked;
    private final transient Saying fault;

    /**
     * @param field as it is sent, with the path inside of what was being made
     * @param asked what stands there
     */
    public FaultyValue(String field, Object asked, Fault fault, Object... values) {
        this(field, asked, Saying.of(fault, values));
    }

    private FaultyValue(String field, Object asked, Saying fault) {
        super("%s is %s; it %s".formatted(field, asked, fault.english()));
        this.field = field;
        this.asked = asked;
        this.fault = fault;
    }

    public String field() {
        return field;
    }

    public Object asked() {
        return asked;
    }

    public Saying fault() {
        return fault;
    }

    /** Makes a part of something larger: what is wrong in it is told with the path to it. */
    public static <T> T within(String path, Supplier<T> part) {
        try {
            return part.get();
        } catch (FaultyValue wrong) {
            throw new FaultyValue(path + "." + wrong.field, wrong.asked, wrong.fault);
        }
    }
}
