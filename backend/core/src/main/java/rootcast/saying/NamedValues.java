package rootcast.saying;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;

/** Names and kinds in the order in which they were written down. */
public final class NamedValues {

    private NamedValues() {}

    /** @param namesAndKinds by turns a name and its kind */
    public static Map<String, ValueKind> of(Object... namesAndKinds) {
        Map<String, ValueKind> values = new LinkedHashMap<>();
        for (int i = 0; i < namesAndKinds.length; i += 2) {
            values.put((String) namesAndKinds[i], (ValueKind) namesAndKinds[i + 1]);
        }
        return Collections.unmodifiableMap(values);
    }
}
