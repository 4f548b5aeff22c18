package rootcast.app.problem;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;
import rootcast.saying.ValueKind;

/**
 * Why a request was not carried out. Thrown inside a transaction it rolls everything back.
 *
 * <p>Source: RFC 9457, Problem Details for HTTP APIs; {@code type} is a relative reference under {@code /problems/}. The
 * type and the members say all that a reader is told; the detail is English, for machines and logs.
 */
public final class Problem extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final ProblemType type;
    private final int status;
    private final String title;
    private final transient Map<String, Object> values = new LinkedHashMap<>();

    public Problem(ProblemType type, String detail) {
        this(type, type.status(), type.title(), detail);
    }

    private Problem(ProblemType type, int status, String title, String detail) {
        super(detail, null, false, false);
        this.type = type;
        this.status = status;
        this.title = title;
    }

    /** What the layer below refused by itself. */
    static Problem ofStatus(int status, String reason, String path) {
        return new Problem(ProblemType.HTTP, status, reason, "%s: %s.".formatted(reason, path));
    }

    /**
     * Adds a member that a program can read.
     *
     * @throws IllegalStateException if the type's list does not have it so: screens would not know how to say it
     */
    public Problem with(String name, Object value) {
        ValueKind kind = type.takes().get(name);
        if (kind == null || !kind.holds(value)) {
            throw new IllegalStateException("%s takes %s, not %s: %s".formatted(type, type.takes(), name, value));
        }
        values.put(name, value);
        return this;
    }

    private Problem about(List<FieldError> errors) {
        values.put("errors", errors);
        return this;
    }

    public int status() {
        return status;
    }

    /** The code that stands in the address of the type. */
    public String code() {
        return type == ProblemType.HTTP ? "http-" + status : type.wireName();
    }

    /** A member that was added; null if it was not. */
    public @Nullable Object member(String name) {
        return values.get(name);
    }

    /** Seconds after which asking again makes sense; null if the problem says nothing of it. */
    @Nullable
    Object retryAfterSeconds() {
        return values.get("retryAfterSeconds");
    }

    /** The members of RFC 9457, and the values. */
    public Map<String, Object> body(String instance) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("type", "/problems/" + code());
        body.put("title", title);
        body.put("status", status);
        body.put("detail", getMessage());
        body.put("instance", instance);
        body.putAll(values);
        return body;
    }

    public static Problem notFound(Thing what, String code) {
        return new Problem(ProblemType.NOT_FOUND, "There is no %s '%s'.".formatted(what.words(), code))
                .with("what", what.wireName())
                .with("asked", code);
    }

    public static Problem unknownCode(String field, String code) {
        String looked = words(field);
        return new Problem(
                        ProblemType.UNKNOWN_CODE,
                        "There is no %s '%s'. Create it first or correct the code.".formatted(looked, code))
                .with("field", field)
                .with("asked", code)
                .about(List.of(FieldError.of(field, Fault.UNKNOWN_CODE, code)));
    }

    public static Problem codeTaken(Thing what, String code) {
        return new Problem(
                        ProblemType.CODE_TAKEN,
                        "There is already a %s '%s'. Choose another code, or change the existing one with PUT."
                                .formatted(what.words(), code))
                .with("what", what.wireName())
                .with("asked", code)
                .about(List.of(FieldError.of("code", Fault.TAKEN)));
    }

    public static Problem nameTaken(Thing what, String name) {
        return new Problem(
                        ProblemType.NAME_TAKEN,
                        "There is already a %s '%s'. Choose another name.".formatted(what.words(), name))
                .with("what", what.wireName())
                .with("asked", name)
                .about(List.of(FieldError.of("name", Fault.TAKEN)));
    }

    /** A field that is missing or cannot be read as what it should be. */
    public static Problem malformed(String field, Fault fault, Object... values) {
        return malformed(List.of(FieldError.of(field, fault, values)));
    }

    public static Problem malformed(List<FieldError> errors) {
        String detail = errors.stream()
                .map(error -> error.field() + " " + error.message())
                .collect(Collectors.joining("; ", "", "."));
        return new Problem(ProblemType.MALFORMED, detail).about(errors);
    }

    /** A field that can be read but holds what is not allowed. */
    public static Problem notAllowed(String field, Object asked, Fault fault, Object... values) {
        return notAllowed(FieldError.of(field, fault, values), asked);
    }

    /** The same for a field whose content must not be repeated. */
    public static Problem notAllowed(String field, Fault fault, Object... values) {
        return notAllowed(FieldError.of(field, fault, values), null);
    }

    public static Problem notAllowed(FaultyValue wrong) {
        return notAllowed(FieldError.of(wrong), wrong.asked());
    }

    private static Problem notAllowed(FieldError error, @Nullable Object asked) {
        Problem problem =
                new Problem(ProblemType.NOT_ALLOWED, error.field() + " " + error.message() + ".").about(List.of(error));
        return asked == null ? problem : problem.with("asked", String.valueOf(asked));
    }

    /** A read named a position that has not arrived here in time. */
    public static Problem notThereYet(long asked, long reached) {
        return new Problem(
                        ProblemType.NOT_THERE_YET,
                        "Position %d was asked for; this node has taken in every fact up to %d. Ask again in a moment, or without atLeast."
                                .formatted(asked, reached))
                .with("asked", asked)
                .with("reached", reached);
    }

    /** A batch that is set apart because it cannot be computed. */
    public static Problem notComputed(String batch, String fault) {
        return new Problem(
                        ProblemType.BATCH_NOT_COMPUTED,
                        "Batch '%s' is set apart, all others go on; its plants are in no figure. The reason: %s."
                                .formatted(batch, fault))
                .with("batch", batch);
    }

    /** The database went away in the middle of a commit and did not come back in time. */
    public static Problem outcomeUnknown() {
        return new Problem(
                ProblemType.OUTCOME_UNKNOWN,
                "The database was lost in the middle of writing. Send the same request again with the same Idempotency-Key: it is done once, whether or not it was.");
    }

    public static Problem notSignedIn() {
        return new Problem(
                ProblemType.NOT_SIGNED_IN, "Nobody is signed in, or the session has ended. Sign in and ask again.");
    }

    /** @param detail why, in a sentence */
    public static Problem noRight(String detail) {
        return new Problem(ProblemType.NO_RIGHT, detail);
    }

    private static String words(String field) {
        return field.replaceAll("([A-Z])", " $1").toLowerCase(java.util.Locale.ROOT);
    }
}
