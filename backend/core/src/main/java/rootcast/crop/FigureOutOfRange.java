package rootcast.crop;

import org.jspecify.annotations.Nullable;

/** A figure of a profile that cannot be meant, with its name and between what it must lie. */
public final class FigureOutOfRange extends IllegalArgumentException {

    private static final long serialVersionUID = 1L;

    private final String field;
    private final double asked;
    private final @Nullable Double least;
    private final @Nullable Double most;

    /**
     * @param field as the record that it belongs to names it
     * @param least where there is no such end, null
     * @param most  the same
     */
    public FigureOutOfRange(String message, String field, double asked, @Nullable Double least, @Nullable Double most) {
        super(message);
        this.field = field;
        this.asked = asked;
        this.least = least;
        this.most = most;
    }

    public String field() {
        return field;
    }

    public double asked() {
        return asked;
    }

    public @Nullable Double least() {
        return least;
    }

    public @Nullable Double most() {
        return most;
    }
}
