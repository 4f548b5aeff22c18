package rootcast.app.problem;

import static rootcast.saying.ValueKind.COUNT;
import static rootcast.saying.ValueKind.FIELD;
import static rootcast.saying.ValueKind.INSTANT;
import static rootcast.saying.ValueKind.LINES;
import static rootcast.saying.ValueKind.PROBABILITY;
import static rootcast.saying.ValueKind.STAGE;
import static rootcast.saying.ValueKind.TEXT;
import static rootcast.saying.ValueKind.THING;

import java.util.Locale;
import java.util.Map;
import rootcast.saying.Sentence;
import rootcast.saying.ValueKind;

/**
 * Every problem that this server answers with, and the members that may come with it.
 *
 * <p>The screens have words for each in each language; {@code docs/problems.json} is this list for them.
 */
public enum ProblemType {
    NOT_FOUND(404, "Not found", "what", THING, "asked", TEXT),
    NOT_KNOWN_THEN(404, "Not known then", "asked", TEXT, "happenedBy", INSTANT, "recordedBy", INSTANT),
    UNKNOWN_CODE(422, "Unknown code", "field", FIELD, "asked", TEXT),
    CODE_TAKEN(409, "Code already in use", "what", THING, "asked", TEXT),
    NAME_TAKEN(409, "Name already in use", "what", THING, "asked", TEXT),
    MALFORMED(400, "The request is not as it should be"),
    NOT_ALLOWED(422, "Not allowed", "asked", TEXT),
    NOT_JSON(400, "Not JSON", "line", COUNT, "column", COUNT),
    BODY_TOO_LARGE(413, "Body too large", "most", COUNT),
    NO_READING_TAKEN(422, "No reading was taken", "accepted", COUNT, "duplicates", COUNT, "rejected", LINES),
    FAULT(500, "Something broke here", "fault", TEXT),
    NOT_THERE_YET(503, "Not there yet", "asked", COUNT, "reached", COUNT),
    OUTCOME_UNKNOWN(503, "Not known yet whether this was written"),
    BATCH_NOT_COMPUTED(500, "This batch cannot be computed", "batch", TEXT),
    KEY_USED_BEFORE(422, "Idempotency-Key was used for something else", "usedAt", INSTANT),

    NOT_SIGNED_IN(401, "Not signed in"),
    UNKNOWN_TOKEN(401, "Unknown token"),
    WRONG_NAME_OR_PASSWORD(401, "Wrong name or password"),
    LOCKED_OUT(429, "Too many failed sign-ins", "retryAfterSeconds", COUNT),
    FOREIGN_ORIGIN(403, "From another site's page"),
    NO_RIGHT(403, "Not yours to do", "right", TEXT, "site", TEXT),
    ACCOUNT_OF_ANOTHER_KIND(403, "Another kind of account", "asked", TEXT),
    ACCOUNT_OFF(403, "Switched off", "asked", TEXT),
    NO_PASSWORD_HERE(403, "No password here", "asked", TEXT),
    NO_PERSON(403, "Not a person"),
    NO_NAME_FROM_DIRECTORY(403, "The directory gave no name"),
    NO_ROLE_FROM_DIRECTORY(403, "The directory gave no role", "asked", TEXT),
    WRONG_SECRET(403, "Wrong secret"),
    LAST_OWNER(409, "The last owner stays", "asked", TEXT),

    MORE_THAN_ALIVE(422, "More plants than are alive", "asked", COUNT, "alive", COUNT),
    MORE_THAN_STUCK(422, "More plants than were stuck", "asked", COUNT, "most", COUNT),
    MORE_THAN_SALEABLE(422, "More trays than can be filled", "asked", COUNT, "saleable", COUNT, "alive", COUNT),
    PLANTS_DO_NOT_FIT_TRAYS(422, "Plants do not fit the trays", "asked", COUNT, "least", COUNT, "most", COUNT),
    SAMPLE_BEYOND_BATCH(422, "The sample is larger than the batch", "benchTrays", COUNT, "cellsPerTray", COUNT),
    STAGE_GOES_BACK(422, "A stage cannot go back", "asked", STAGE, "current", STAGE),
    SHIP_BEFORE_ROOTED(422, "Not rooted yet", "current", STAGE),
    BEFORE_STICKING(422, "Before the batch was stuck", "asked", INSTANT, "stuckAt", INSTANT),
    IN_THE_FUTURE(422, "In the future", "asked", INSTANT, "now", INSTANT),
    ALREADY_THERE(422, "Already in that house", "asked", TEXT),
    OUT_OF_RANGE(422, "Out of range", "field", FIELD, "asked", COUNT, "least", COUNT, "most", COUNT),
    CONTRADICTS_LATER_ENTRY(422, "A later entry speaks against it", "entry", TEXT, "because", TEXT),
    NO_SUCH_ENTRY(422, "No such entry", "asked", TEXT),
    ALREADY_REVERSED(409, "Already reversed", "asked", TEXT, "by", TEXT),
    TREATMENT_ALREADY_REVERSED(409, "Already reversed", "asked", TEXT, "reversedAt", INSTANT),
    CANNOT_BE_REVERSED(422, "This kind of entry is not reversed", "asked", TEXT),
    IMPLAUSIBLE_PLANTS(
            409,
            "Hardly likely",
            "asked",
            COUNT,
            "booked",
            COUNT,
            "least",
            COUNT,
            "most",
            COUNT,
            "probability",
            PROBABILITY),
    IMPLAUSIBLE_STAGE(
            409, "Hardly likely", "asked", STAGE, "seenAt", INSTANT, "probability", PROBABILITY, "expected", INSTANT),
    NOT_ENOUGH_OPEN(409, "Not enough open trays", "lines", LINES),
    PROFILE_PINNED(409, "Another version is pinned", "pinned", COUNT, "asked", COUNT, "since", INSTANT),
    ALREADY_CLOSED(409, "Already closed", "asked", TEXT, "closedAt", INSTANT),
    HOUSE_CLOSED(409, "The house must not be entered", "house", TEXT, "product", TEXT, "until", INSTANT),

    /** Whatever the layer below refuses by itself; its own status stands in the code. */
    HTTP(400, "Refused");

    private final int status;
    private final String title;
    private final Map<String, ValueKind> takes;

    ProblemType(int status, String title, Object... namesAndKinds) {
        this.status = status;
        this.title = title;
        this.takes = Sentence.values(namesAndKinds);
    }

    public int status() {
        return status;
    }

    public String title() {
        return title;
    }

    public String wireName() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }

    /** Members beside those of RFC 9457 and {@code errors}; one that says nothing in a case is left out. */
    public Map<String, ValueKind> takes() {
        return takes;
    }
}
