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
import rootcast.saying.Saying;

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
    public record Read(Instant at, @Nullable Saying note) {}

    /** Why a time cannot be taken. */
    public static final class NoSuchTime extends Exception {
        private static final long serialVersionUID = 1L;

        private final transient Saying why;

        NoSuchTime(ReadingRemark remark, Object... values) {
            super(Saying.of(remark, values).english(), null, false, false);
            this.why = Saying.of(remark, values);
        }

        public Saying why() {
            return why;
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
            throw new NoSuchTime(ReadingRemark.NOT_A_TIME, text);
        }
    }

    private Read local(LocalDateTime local, ZoneId zone) throws NoSuchTime {
        List<ZoneOffset> offsets = zone.getRules().getValidOffsets(local);
        if (offsets.isEmpty()) {
            throw new NoSuchTime(ReadingRemark.NO_SUCH_LOCAL_TIME, local.toString(), zone.getId());
        }
        Instant first = local.toInstant(offsets.get(0));
        if (offsets.size() == 1) {
            return new Read(first, null);
        }
        boolean second = !last.isBefore(first);
        return new Read(
                second ? local.toInstant(offsets.get(1)) : first,
                Saying.of(
                        second ? ReadingRemark.SECOND_OF_TWO : ReadingRemark.FIRST_OF_TWO,
                        local.toString(),
                        zone.getId()));
    }
}
