package rootcast.saying;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/**
 * What one member of a list of {@link Sayable}s says.
 *
 * @param english with {@code {name}} where a value stands
 * @param takes   what must come with it, by name and in the order in which {@link Saying#of} takes it
 */
public record Sentence(String english, Map<String, ValueKind> takes) {

    /** @param namesAndKinds by turns a name and its kind */
    public static Sentence of(String english, Object... namesAndKinds) {
        return new Sentence(english, values(namesAndKinds));
    }

    /** Names and kinds in the order in which they were written down. */
    public static Map<String, ValueKind> values(Object... namesAndKinds) {
        Map<String, ValueKind> values = new LinkedHashMap<>();
        for (int i = 0; i < namesAndKinds.length; i += 2) {
            values.put((String) namesAndKinds[i], (ValueKind) namesAndKinds[i + 1]);
        }
        return Collections.unmodifiableMap(values);
    }
}
