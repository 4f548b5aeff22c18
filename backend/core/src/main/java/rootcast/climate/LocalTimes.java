package rootcast.climate;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.format.DateTimeFormatter;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Turns the times of a table into instants, row after row.
 *
 * <p>When clocks go forward an hour of local times does not exist, and such a row is refused. When they go back an hour
 * comes twice: the first pass is taken until the times of the table would go back, the second from there on, and every
 * such row is named.
 */
public final class LocalTimes {

    private final @Nullable ZoneId zone;
    private final DateTimeFormatter format;
    private Instant last = Instant.MIN;

    /** @param zone of the times; null if each carries its offset */
    public LocalTimes(@Nullable ZoneId zone, DateTimeFormatter format) {
        this.zone = zone;
        this.format = format;
    }

    /** @param note what had to be decided; null if nothing */
    public record Read(Instant at, @Nullable String note) {}

    /** Why a time cannot be taken. */
    public static final class NoSuchTime extends Exception {
        private static final long serialVersionUID = 1L;

        NoSuchTime(String reason) {
            super(reason, null, false, false);
        }
    }

    public Read read(String text) throws NoSuchTime {
        try {
            Read read = zone == null
                    ? new Read(OffsetDateTime.parse(text.strip()).toInstant(), null)
                    : local(LocalDateTime.parse(text.strip(), format), zone);
            last = read.at();
            return new Read(read.at().truncatedTo(ChronoUnit.MICROS), read.note());
        } catch (DateTimeException notATime) {
            throw new NoSuchTime("'%s' is no time of the form %s"
                    .formatted(text, zone == null ? "2026-03-01T08:00:00Z" : "that was given"));
        }
    }

    private Read local(LocalDateTime local, ZoneId zone) throws NoSuchTime {
        List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
        if (offsets.isEmpty()) {
            throw new NoSuchTime("%s does not exist in %s: clocks went forward over it".formatted(local, zone));
        }
        Instant first = local.toInstant(offsets.get(0));
        if (offsets.size() == 1) {
            return new Read(first, null);
        }
        boolean second = !last.isBefore(first);
        return new Read(
                second ? local.toInstant(offsets.get(1)) : first,
                "%s came twice in %s: taken as the %s, UTC%s"
                        .formatted(local, zone, second ? "second" : "first", offsets.get(second ? 1 : 0)));
    }
}
