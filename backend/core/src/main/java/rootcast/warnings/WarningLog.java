package rootcast.warnings;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Fits what is found now to what was written down before, so that one mistake stays one warning while late readings move
 * its ends.
 *
 * <p>A warning found is one written down if both are about the same thing and share a moment. What was found and not
 * written is new; what was written as lasting and is no longer found has ended.
 */
public final class WarningLog {

    /** A warning as it was written down. */
    public record Logged(UUID id, Warning warning) {}

    /**
     * What to write.
     *
     * @param id null for a warning that is new
     */
    public record Change(@Nullable UUID id, Warning warning) {

        public boolean isNew() {
            return id == null;
        }
    }

    private WarningLog() {}

    /**
     * @param logged      of the house, those that last and those that ended within the span that was looked at
     * @param found       in that span, oldest first
     * @param asOf        end of the last hour that was looked at
     * @param longestPast a warning found only after it was over is still written down if it ended no longer ago
     */
    public static List<Change> changes(List<Logged> logged, List<Warning> found, Instant asOf, Duration longestPast) {
        List<Change> changes = new ArrayList<>();
        List<Logged> left = new ArrayList<>(logged);
        for (Warning warning : found) {
            Optional<Logged> known = left.stream()
                    .filter(each -> each.warning().isAboutTheSameAs(warning)
                            && each.warning().overlaps(warning))
                    .findFirst();
            if (known.isPresent()) {
                left.remove(known.get());
                Warning fitted = keepingStart(known.get().warning(), warning);
                if (!fitted.equals(known.get().warning())) {
                    changes.add(new Change(known.get().id(), fitted));
                }
            } else if (warning.until() == null || !warning.until().isBefore(asOf.minus(longestPast))) {
                changes.add(new Change(null, warning));
            }
        }
        left.stream()
                .filter(each -> each.warning().until() == null)
                .forEach(each -> changes.add(new Change(each.id(), ended(each.warning(), asOf))));
        return changes;
    }

    /** When it was raised is when people were told; and a span that begins later must not move the start. */
    private static Warning keepingStart(Warning before, Warning now) {
        Instant since = before.since().isBefore(now.since()) ? before.since() : now.since();
        return new Warning(
                now.kind(),
                now.house(),
                now.batch(),
                now.measured(),
                since,
                before.raisedAt(),
                now.until(),
                now.worst(),
                now.limit(),
                now.unit(),
                now.batches());
    }

    private static Warning ended(Warning lasting, Instant at) {
        return new Warning(
                lasting.kind(),
                lasting.house(),
                lasting.batch(),
                lasting.measured(),
                lasting.since(),
                lasting.raisedAt(),
                at,
                lasting.worst(),
                lasting.limit(),
                lasting.unit(),
                lasting.batches());
    }
}
