package rootcast.app.once;

import java.util.UUID;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rootcast.app.problem.Problem;
import rootcast.saying.Fault;

/**
 * The value of an {@code Idempotency-Key} header: a structured-field string in quotes, or the bare text in them.
 *
 * @param value empty if the sender gave none
 */
public record OnceKey(String value) {

    private static final Pattern ALLOWED = Pattern.compile("[\\x21-\\x7e]{1,200}");

    /** Not a visible character, so that no sender's key is ever one of these. */
    private static final String MADE_HERE = " ";

    public static OnceKey none() {
        return new OnceKey("");
    }

    public static OnceKey optional(@Nullable String header) {
        if (header == null) {
            return none();
        }
        String text = header.strip();
        if (text.length() > 1 && text.startsWith("\"") && text.endsWith("\"")) {
            text = text.substring(1, text.length() - 1);
        }
        if (!ALLOWED.matcher(text).matches()) {
            throw Problem.malformed("Idempotency-Key", Fault.NOT_A_KEY);
        }
        return new OnceKey(text);
    }

    public static OnceKey required(@Nullable String header) {
        OnceKey key = optional(header);
        if (!key.isGiven()) {
            throw Problem.malformed("Idempotency-Key", Fault.MISSING);
        }
        return key;
    }

    /** This key, or one made here: a write without one can still be looked for after a broken commit. */
    OnceKey orMade() {
        return isGiven() ? this : new OnceKey(MADE_HERE + UUID.randomUUID());
    }

    private boolean isGiven() {
        return !value.isEmpty();
    }
}
