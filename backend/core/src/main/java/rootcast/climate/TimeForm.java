package rootcast.climate;

import java.time.DateTimeException;
import java.time.Duration;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.format.DateTimeFormatterBuilder;
import java.time.format.ResolverStyle;
import java.time.temporal.ChronoField;
import java.time.temporal.TemporalAccessor;
import java.time.temporal.TemporalQueries;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import rootcast.climate.LocalTimes.NoSuchTime;

/** How a table writes its times. Read strictly: 31 June is no day, not the last one of June. */
public final class TimeForm {

    /** No clock on earth is further from UTC: Kiritimati, +14:00. */
    private static final Duration FURTHEST = Duration.ofHours(14);

    private static final Pattern OFFSET = Pattern.compile(".*\\d:\\d{2}\\S*?\\s?(([+-])(\\d{2}):?(\\d{2}))");

    private static final DateTimeFormatter ISO = new DateTimeFormatterBuilder()
            .append(DateTimeFormatter.ISO_LOCAL_DATE_TIME)
            .optionalStart()
            .parseLenient()
            .appendOffsetId()
            .optionalEnd()
            .toFormatter(Locale.ROOT)
            .withResolverStyle(ResolverStyle.STRICT);

    private final DateTimeFormatter format;

    private TimeForm(DateTimeFormatter format) {
        this.format = format;
    }

    /**
     * A time as it stands in a table, before it is known by whose clock.
     *
     * @param said the offset or zone that stands with it; null if none does
     */
    public record Written(
            String text, LocalDateTime local, @Nullable ZoneId said) {}

    /** ISO 8601, with an offset or without. */
    public static TimeForm iso() {
        return new TimeForm(ISO);
    }

    /** @throws IllegalArgumentException if that is no pattern */
    public static TimeForm of(String pattern) {
        return new TimeForm(new DateTimeFormatterBuilder()
                .appendPattern(pattern)
                .parseDefaulting(ChronoField.ERA, 1)
                .toFormatter(Locale.ROOT)
                .withResolverStyle(ResolverStyle.STRICT));
    }

    public Written read(String text) throws NoSuchTime {
        String stripped = text.strip();
        refuseImpossibleOffset(stripped);
        try {
            TemporalAccessor parsed = format.parse(stripped);
            return new Written(stripped, LocalDateTime.from(parsed), parsed.query(TemporalQueries.zone()));
        } catch (DateTimeException notATime) {
            throw new NoSuchTime(ReadingRemark.NOT_A_TIME, text);
        }
    }

    /** Looked for in the text: beyond ±18:00 the parser would only say that it is no time. */
    private static void refuseImpossibleOffset(String text) throws NoSuchTime {
        Matcher offset = OFFSET.matcher(text);
        if (offset.matches()) {
            Duration away =
                    Duration.ofHours(Integer.parseInt(offset.group(3))).plusMinutes(Integer.parseInt(offset.group(4)));
            if (away.compareTo(FURTHEST) > 0) {
                throw new NoSuchTime(ReadingRemark.IMPOSSIBLE_OFFSET, text, offset.group(1));
            }
        }
    }

    static String shown(ZoneOffset offset) {
        return offset.equals(ZoneOffset.UTC) ? "+00:00" : offset.getId();
    }
}
