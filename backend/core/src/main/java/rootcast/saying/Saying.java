package rootcast.saying;

import java.util.LinkedHashMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Something to be told: a code and its values.
 *
 * @param values  by name, each of the kind that its list states
 * @param english the same as a sentence or a part of one, for machines and logs
 */
public record Saying(String code, Map<String, Object> values, String english) {

    /**
     * @param values one for each that {@code what} asks for, in its order; null for the open end of a span, which is left out
     * @throws IllegalStateException if one is missing or of another kind: the list would not be true
     */
    public static Saying of(Sayable what, @Nullable Object... values) {
        if (values.length != what.takes().size()) {
            throw new IllegalStateException("%s takes %s".formatted(what.wireName(), what.takes()));
        }
        Map<String, Object> named = new LinkedHashMap<>();
        String english = what.english();
        int next = 0;
        for (Map.Entry<String, ValueKind> value : what.takes().entrySet()) {
            Object given = values[next++];
            boolean openEnd = given == null && value.getValue() == ValueKind.MEASURE;
            if (!openEnd && !value.getValue().holds(given)) {
                throw new IllegalStateException(
                        "%s of %s is a %s, not %s".formatted(value.getKey(), what.wireName(), value.getValue(), given));
            }
            if (!openEnd) {
                named.put(value.getKey(), given);
            }
            english = english.replace("{" + value.getKey() + "}", openEnd ? "any" : plain(given));
        }
        return new Saying(what.wireName(), named, english);
    }

    private static String plain(Object value) {
        return value instanceof Double number && number == Math.rint(number) && Math.abs(number) < 1e9
                ? String.valueOf(number.longValue())
                : String.valueOf(value);
    }
}
