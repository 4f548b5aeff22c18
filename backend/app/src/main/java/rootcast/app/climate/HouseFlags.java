package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.store.Flags;
import rootcast.app.climate.store.Readings;
import rootcast.climate.FlagKind;
import rootcast.climate.FlagWords;
import rootcast.climate.QualityFlag;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingRemark;
import rootcast.saying.Saying;

/** The flags of a house as a person reads them: what belongs together is one line. */
@ApplicationScoped
public class HouseFlags {

    /** Lines are made of so many flags at most, the newest. */
    private static final int MOST = 5_000;

    private static final Duration TOGETHER = Duration.ofMinutes(15);
    private static final Duration HOUR = Duration.ofHours(1);
    private static final Set<FlagKind> OF_HOURS = Set.of(FlagKind.FLAT_LINE, FlagKind.DISAGREEMENT);

    @Inject
    Flags flags;

    @Inject
    Readings readings;

    /**
     * Flags of one sensor and kind that follow one another.
     *
     * @param id     of the first of them; null for late readings, which there is nothing to override about
     * @param until  of the last of them: its moment, or the end of its hour
     * @param why    of the first of them
     * @param sensor null for readings sent without one
     * @param value  of the first of them, in the quantity's unit
     * @param count  how many there are
     */
    public record Line(
            @Nullable UUID id,
            Instant at,
            Instant until,
            String kind,
            Saying why,
            @Nullable String sensor,
            String quantity,
            @Nullable Double value,
            boolean leftOut,
            boolean overridden,
            @Nullable String overrideReason,
            long count) {}

    public List<Line> lines(HouseQuantity of, Instant fromInclusive, Instant untilExclusive) {
        Map<UUID, Flags.Word> words = flags.words(of, fromInclusive, untilExclusive);
        Map<String, Line> open = new LinkedHashMap<>();
        List<Line> lines = new ArrayList<>();
        for (Flags.Shown shown : flags.shown(of, fromInclusive, untilExclusive, MOST)) {
            Flags.Word word = words.get(shown.id());
            Line line = line(shown, word != null && word.overridden() ? word.reason() : null);
            String run = line.kind() + '|' + line.sensor() + '|' + line.overrideReason() + '|' + line.leftOut();
            Line before = open.get(run);
            if (before != null && !before.until().plus(gap(shown.flag())).isBefore(line.at())) {
                open.put(run, longer(before, line));
            } else {
                if (before != null) {
                    lines.add(before);
                }
                open.put(run, line);
            }
        }
        lines.addAll(open.values());
        readings.late(of, fromInclusive, untilExclusive).forEach(late -> lines.add(late(of.quantity(), late)));
        lines.sort(java.util.Comparator.comparing(Line::at).thenComparing(Line::kind));
        return lines;
    }

    private static Duration gap(QualityFlag flag) {
        return OF_HOURS.contains(flag.kind()) ? Duration.ZERO : TOGETHER;
    }

    private static Line longer(Line before, Line next) {
        return new Line(
                before.id(),
                before.at(),
                next.until(),
                before.kind(),
                before.why(),
                before.sensor(),
                before.quantity(),
                before.value(),
                before.leftOut(),
                before.overridden(),
                before.overrideReason(),
                before.count() + 1);
    }

    private static Line line(Flags.Shown shown, @Nullable String overrideReason) {
        QualityFlag flag = shown.flag();
        Quantity quantity = shown.of().quantity();
        return new Line(
                shown.id(),
                flag.at(),
                OF_HOURS.contains(flag.kind()) ? flag.at().plus(HOUR) : flag.at(),
                flag.kind().wireName(),
                FlagWords.remark(quantity, flag),
                named(flag.sensor()),
                quantity.wireName(),
                flag.value(),
                flag.leftOut() && overrideReason == null,
                overrideReason != null,
                overrideReason,
                1);
    }

    private static Line late(Quantity quantity, Readings.Late late) {
        return new Line(
                null,
                late.first(),
                late.last(),
                FlagKind.LATE.wireName(),
                Saying.of(ReadingRemark.LATE),
                named(late.sensor()),
                quantity.wireName(),
                null,
                false,
                false,
                null,
                late.readings());
    }

    private static @Nullable String named(String sensor) {
        return sensor.isEmpty() ? null : sensor;
    }
}
