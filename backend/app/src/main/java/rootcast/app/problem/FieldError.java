package rootcast.app.problem;

import java.util.Map;
import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;
import rootcast.saying.Saying;

/**
 * Names one field of the request and what is wrong with it.
 *
 * @param field   with dots and indices: {@code profile.stages[1].minC}
 * @param code    of {@link Fault}; a screen has words for each
 * @param values  what the code comes with
 * @param message the same in English, for machines
 */
public record FieldError(String field, String code, Map<String, Object> values, String message) {

    public static FieldError of(String field, Fault fault, Object... values) {
        return of(field, Saying.of(fault, values));
    }

    static FieldError of(FaultyValue wrong) {
        return of(wrong.field(), wrong.fault());
    }

    /** Says more to a machine than the code does. */
    FieldError saying(String message) {
        return new FieldError(field, code, values, message);
    }

    private static FieldError of(String field, Saying fault) {
        return new FieldError(field, fault.code(), fault.values(), fault.english());
    }
}
