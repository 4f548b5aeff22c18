package rootcast.app.climate.mqtt;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * What a message says: a plain number, or {@code {"value":…, "at":…}}, in which other members do not matter.
 *
 * @param at when it was measured; null if the message does not say
 */
record Payload(double value, @Nullable Instant at) {

    private static final int LONGEST = 4_096;
    private static final Pattern NUMBER =
            Pattern.compile("[+-]?(\\d{1,15}(\\.\\d{0,15})?|\\.\\d{1,15})([eE][+-]?\\d{1,2})?");

    /** Why a message cannot be read. */
    static final class Unreadable extends Exception {
        private static final long serialVersionUID = 1L;

        Unreadable(String reason) {
            super(reason, null, false, false);
        }
    }

    static Payload read(String text, ObjectMapper json) throws Unreadable {
        if (text.length() > LONGEST) {
            throw new Unreadable("holds %d characters; a reading needs few".formatted(text.length()));
        }
        String bare = text.strip();
        if (NUMBER.matcher(bare).matches()) {
            return new Payload(Double.parseDouble(bare), null);
        }
        if (!bare.startsWith("{")) {
            throw new Unreadable("is neither a number nor {\"value\":…, \"at\":…}");
        }
        try {
            JsonNode tree = json.readTree(bare);
            JsonNode value = tree.get("value");
            if (value == null || !value.isNumber()) {
                throw new Unreadable("has no number as its \"value\"");
            }
            return new Payload(value.doubleValue(), at(tree.get("at")));
        } catch (JsonProcessingException broken) {
            throw new Unreadable("is broken JSON");
        }
    }

    private static @Nullable Instant at(@Nullable JsonNode at) throws Unreadable {
        if (at == null || at.isNull()) {
            return null;
        }
        if (!at.isTextual()) {
            throw new Unreadable("has no text such as \"2026-03-01T08:00:00Z\" as its \"at\"");
        }
        try {
            return OffsetDateTime.parse(at.textValue()).toInstant().truncatedTo(ChronoUnit.MICROS);
        } catch (DateTimeException noTime) {
            throw new Unreadable("has '%s' as its \"at\"; write it as 2026-03-01T08:00:00Z".formatted(at.textValue()));
        }
    }
}
