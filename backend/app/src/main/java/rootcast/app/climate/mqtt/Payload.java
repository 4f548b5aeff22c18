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
import rootcast.climate.ReadingRemark;
import rootcast.saying.Saying;

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

        private final transient Saying why;

        Unreadable(ReadingRemark remark, Object... values) {
            this(Saying.of(remark, values));
        }

        private Unreadable(Saying why) {
            super(why.english(), null, false, false);
            this.why = why;
        }

        Saying why() {
            return why;
        }
    }

    static Payload read(String text, ObjectMapper json) throws Unreadable {
        if (text.length() > LONGEST) {
            throw new Unreadable(ReadingRemark.TOO_LONG_A_MESSAGE, text.length());
        }
        String bare = text.strip();
        if (NUMBER.matcher(bare).matches()) {
            return new Payload(Double.parseDouble(bare), null);
        }
        if (!bare.startsWith("{")) {
            throw new Unreadable(ReadingRemark.NEITHER_NUMBER_NOR_OBJECT);
        }
        try {
            JsonNode tree = json.readTree(bare);
            JsonNode value = tree.get("value");
            if (value == null || !value.isNumber()) {
                throw new Unreadable(ReadingRemark.NO_NUMBER_AS_VALUE);
            }
            return new Payload(value.doubleValue(), at(tree.get("at")));
        } catch (JsonProcessingException broken) {
            throw new Unreadable(ReadingRemark.BROKEN_JSON);
        }
    }

    private static @Nullable Instant at(@Nullable JsonNode at) throws Unreadable {
        if (at == null || at.isNull()) {
            return null;
        }
        if (!at.isTextual()) {
            throw new Unreadable(ReadingRemark.NO_TIME_AS_AT);
        }
        try {
            return OffsetDateTime.parse(at.textValue()).toInstant().truncatedTo(ChronoUnit.MICROS);
        } catch (DateTimeException noTime) {
            throw new Unreadable(ReadingRemark.NO_TIME_AS_AT);
        }
    }
}
