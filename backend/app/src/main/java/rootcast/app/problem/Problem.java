package rootcast.app.problem;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Why a request was not carried out. Thrown inside a transaction it rolls everything back.
 *
 * <p>Source: RFC 9457, Problem Details for HTTP APIs; {@code type} is a relative reference under {@code /problems/}.
 */
public final class Problem extends RuntimeException {

    private static final long serialVersionUID = 1L;

    private final int status;
    private final String type;
    private final String title;
    private final transient Map<String, Object> numbers = new LinkedHashMap<>();

    public Problem(int status, String type, String title, String detail) {
        super(detail, null, false, false);
        this.status = status;
        this.type = type;
        this.title = title;
    }

    /** Adds a typed member that a program can read. */
    public Problem with(String name, Object value) {
        numbers.put(name, value);
        return this;
    }

    public int status() {
        return status;
    }

    public String type() {
        return type;
    }

    /** A member that was added; null if it was not. */
    public @Nullable Object member(String name) {
        return numbers.get(name);
    }

    /** Seconds after which asking again makes sense; null if the problem says nothing of it. */
    @Nullable
    Object retryAfterSeconds() {
        return numbers.get("retryAfterSeconds");
    }

    /** The members of RFC 9457, and the numbers. */
    public Map<String, Object> body(String instance) {
        Map<String, Object> body = new LinkedHashMap<>();
        body.put("type", "/problems/" + type);
        body.put("title", title);
        body.put("status", status);
        body.put("detail", getMessage());
        body.put("instance", instance);
        body.putAll(numbers);
        return body;
    }

    /** @param kind what was looked for, in words: "site", "crop" */
    public static Problem notFound(String kind, String code) {
        return new Problem(404, "not-found", "Not found", "There is no %s '%s'.".formatted(kind, code))
                .with("asked", code);
    }

    public static Problem unknownCode(String field, String code) {
        return new Problem(
                        422,
                        "unknown-code",
                        "Unknown code",
                        "There is no %s '%s'. Create it first or correct the code.".formatted(words(field), code))
                .with("field", field)
                .with("asked", code)
                .with("errors", List.of(new FieldError(field, "there is no %s '%s'".formatted(words(field), code))));
    }

    public static Problem codeTaken(String kind, String code) {
        return new Problem(
                        409,
                        "code-taken",
                        "Code already in use",
                        "There is already a %s '%s'. Choose another code, or change the existing one with PUT."
                                .formatted(kind, code))
                .with("asked", code)
                .with("errors", List.of(new FieldError("code", "is already in use")));
    }

    /** A field that is missing or cannot be read as what it should be. */
    public static Problem malformed(String field, String message) {
        return malformed(List.of(new FieldError(field, message)));
    }

    public static Problem malformed(List<FieldError> errors) {
        StringBuilder detail = new StringBuilder();
        for (FieldError error : errors) {
            detail.append(detail.isEmpty() ? "" : "; ")
                    .append(error.field())
                    .append(' ')
                    .append(error.message());
        }
        return new Problem(
                        400,
                        "malformed",
                        "The request is not as it should be",
                        detail.append('.').toString())
                .with("errors", errors);
    }

    /** A field that can be read but holds what is not allowed. */
    public static Problem notAllowed(String field, Object asked, String message) {
        return new Problem(422, "not-allowed", "Not allowed", field + " " + message + ".")
                .with("asked", asked)
                .with("errors", List.of(new FieldError(field, message)));
    }

    /** A read named a position that has not arrived here in time. */
    public static Problem notThereYet(long asked, long reached) {
        return new Problem(
                        503,
                        "not-there-yet",
                        "Not there yet",
                        "Position %d was asked for; this node has taken in every fact up to %d. Ask again in a moment, or without atLeast."
                                .formatted(asked, reached))
                .with("asked", asked)
                .with("reached", reached);
    }

    /** A batch that is set apart because it cannot be computed. */
    public static Problem notComputed(String batch, String fault) {
        return new Problem(
                        500,
                        "batch-not-computed",
                        "This batch cannot be computed",
                        "Batch '%s' is set apart, all others go on; its plants are in no figure. The reason: %s."
                                .formatted(batch, fault))
                .with("batch", batch);
    }

    /** The database went away in the middle of a commit and did not come back in time. */
    public static Problem outcomeUnknown() {
        return new Problem(
                503,
                "outcome-unknown",
                "Not known yet whether this was written",
                "The database was lost in the middle of writing. Send the same request again with the same Idempotency-Key: it is done once, whether or not it was.");
    }

    /** The same for a field whose content must not be repeated. */
    public static Problem notAllowed(String field, String message) {
        return new Problem(422, "not-allowed", "Not allowed", field + " " + message + ".")
                .with("errors", List.of(new FieldError(field, message)));
    }

    public static Problem notSignedIn() {
        return new Problem(
                401,
                "not-signed-in",
                "Not signed in",
                "Nobody is signed in, or the session has ended. Sign in and ask again.");
    }

    /** @param detail why, in a sentence */
    public static Problem noRight(String detail) {
        return new Problem(403, "no-right", "Not yours to do", detail);
    }

    private static String words(String field) {
        return field.replaceAll("([A-Z])", " $1").toLowerCase(java.util.Locale.ROOT);
    }

    /** Names one field of the request and what is wrong with it. */
    public record FieldError(String field, String message) {}
}
