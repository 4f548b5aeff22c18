package rootcast.app.wiring;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.JsonMappingException;
import com.fasterxml.jackson.databind.MapperFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.databind.cfg.CoercionAction;
import com.fasterxml.jackson.databind.cfg.CoercionInputShape;
import com.fasterxml.jackson.databind.deser.std.StdScalarDeserializer;
import com.fasterxml.jackson.databind.deser.std.StringDeserializer;
import com.fasterxml.jackson.databind.module.SimpleModule;
import com.fasterxml.jackson.databind.type.LogicalType;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Singleton;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.util.function.Function;

/**
 * Reads JSON as it stands: a misspelt field, half a plant or a number in quotes is refused and not guessed at.
 */
@Singleton
class StrictJson implements ObjectMapperCustomizer {

    /** After the modules of the framework: of two readers for a type the one registered last is asked. */
    @Override
    public int priority() {
        return MINIMUM_PRIORITY;
    }

    @Override
    public void customize(ObjectMapper mapper) {
        mapper.enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES);
        mapper.enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES);
        mapper.enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
        mapper.disable(DeserializationFeature.ACCEPT_FLOAT_AS_INT);
        mapper.disable(DeserializationFeature.ADJUST_DATES_TO_CONTEXT_TIME_ZONE);
        mapper.disable(MapperFeature.ALLOW_COERCION_OF_SCALARS);
        mapper.disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS);
        mapper.enable(JsonParser.Feature.STRICT_DUPLICATE_DETECTION);
        mapper.coercionConfigFor(LogicalType.Textual)
                .setCoercion(CoercionInputShape.Integer, CoercionAction.Fail)
                .setCoercion(CoercionInputShape.Float, CoercionAction.Fail)
                .setCoercion(CoercionInputShape.Boolean, CoercionAction.Fail);
        mapper.enable(DeserializationFeature.FAIL_ON_NUMBERS_FOR_ENUMS);
        mapper.registerModule(new SimpleModule("times as text")
                .addDeserializer(String.class, new StorableText())
                .addDeserializer(OffsetDateTime.class, new Text<>(OffsetDateTime.class, OffsetDateTime::parse))
                .addDeserializer(LocalDate.class, new Text<>(LocalDate.class, LocalDate::parse)));
    }

    /** A time is text in ISO 8601: a bare number could be seconds, milliseconds or a slip, and a date has no hour. */
    private static final class Text<T> extends StdScalarDeserializer<T> {
        private static final long serialVersionUID = 1L;

        private final transient Function<String, T> parse;

        Text(Class<T> type, Function<String, T> parse) {
            super(type);
            this.parse = parse;
        }

        @Override
        public T deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            if (!parser.hasToken(JsonToken.VALUE_STRING)) {
                return context.reportInputMismatch(
                        this, "must be text such as \"2026-03-01\" or \"2026-03-01T08:00:00Z\"");
            }
            try {
                return parse.apply(parser.getText());
            } catch (DateTimeException notATime) {
                throw JsonMappingException.from(parser, notATime.getMessage(), notATime);
            }
        }
    }

    /** PostgreSQL keeps no zero byte, and half of a surrogate pair is no character: refused at the door, not in the middle. */
    private static final class StorableText extends StdScalarDeserializer<String> {
        private static final long serialVersionUID = 1L;

        StorableText() {
            super(String.class);
        }

        @Override
        public String deserialize(JsonParser parser, DeserializationContext context) throws IOException {
            String text = StringDeserializer.instance.deserialize(parser, context);
            if (text != null && !isStorable(text)) {
                throw JsonMappingException.from(parser, "holds what is not a character");
            }
            return text;
        }

        private static boolean isStorable(String text) {
            boolean pairs = false;
            for (int i = 0; i < text.length(); i++) {
                char each = text.charAt(i);
                if (each == 0) {
                    return false;
                }
                pairs |= Character.isSurrogate(each);
            }
            // an encoder for every code and unit of ten thousand readings costs more than the rest of them
            return !pairs || StandardCharsets.UTF_8.newEncoder().canEncode(text);
        }
    }
}
