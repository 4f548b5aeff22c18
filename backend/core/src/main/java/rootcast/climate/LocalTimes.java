package rootcast.climate;

import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.time.zone.ZoneOffsetTransition;
import java.time.zone.ZoneRules;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rootcast.saying.Saying;

/**
 * Turns the times of one clock into instants, row after row.
 *
 * <p>When clocks go forward an hour of local times does not exist, and such a row is refused. When they go back an hour
 * comes twice: the first pass is taken until the times would go back, the second from there on, and every such row is
 * named.
 *
 * <p>A time that states its offset is that instant. UTC is a way of writing, and a logger that is never put forward is
 * right all the same; the latter is named. An offset that the clocks here show in no season is refused: either it or the
 * hour beside it is wrong, and nobody can tell which.
 */
public final class LocalTimes {

    private final ZoneId zone;
    private Instant last = Instant.MIN;

    /** @param zone of the times that state none, and what stated offsets are held against */
    public LocalTimes(ZoneId zone) {
        this.zone = zone;
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

    public Read read(TimeForm.Written time) throws NoSuchTime {
        Read read = time.said() instanceof ZoneOffset offset
                ? stated(time, offset)
                : local(time.local(), time.said() == null ? zone : time.said());
        last = read.at();
        return new Read(read.at().truncatedTo(ChronoUnit.MICROS), read.note());
    }

    private Read stated(TimeForm.Written time, ZoneOffset offset) throws NoSuchTime {
        Instant at = time.local().toInstant(offset);
        ZoneRules rules = zone.getRules();
        if (offset.equals(ZoneOffset.UTC) || offset.equals(rules.getOffset(at))) {
            return new Read(at, null);
        }
        boolean ofAnotherSeason = offset.equals(rules.getStandardOffset(at))
                || Stream.of(rules.previousTransition(at), rules.nextTransition(at))
                        .anyMatch(change -> change != null && shows(change, offset));
        if (!ofAnotherSeason) {
            throw new NoSuchTime(ReadingRemark.OFFSET_OF_ELSEWHERE, time.text(), TimeForm.shown(offset), zone.getId());
        }
        return new Read(
                at,
                Saying.of(
                        ReadingRemark.OFFSET_OF_ANOTHER_SEASON,
                        time.text(),
                        TimeForm.shown(offset),
                        TimeForm.shown(rules.getOffset(at)),
                        zone.getId()));
    }

    private static boolean shows(ZoneOffsetTransition change, ZoneOffset offset) {
        return offset.equals(change.getOffsetBefore()) || offset.equals(change.getOffsetAfter());
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
