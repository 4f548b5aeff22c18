package rootcast.app.demo;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.SplittableRandom;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.ledger.What;

/**
 * The entries of one batch as people wrote them down: at work, minutes to hours after it happened, and none that was not
 * yet recorded when the demo starts.
 */
final class Diary {

    private static final Duration BETWEEN_ENTRIES = Duration.ofMinutes(5);

    private final String batch;
    private final String site;
    private final WorkingHours hours;
    private final SplittableRandom random;
    private final Instant now;
    private final List<DemoEntry> entries = new ArrayList<>();
    private Instant lastHappened;
    private Instant lastRecorded;

    /** @param now the demo's start; what would be recorded later is left out */
    Diary(DemoBatch batch, WorkingHours hours, SplittableRandom random, Instant now) {
        this.batch = batch.key();
        this.site = batch.site();
        this.hours = hours;
        this.random = random;
        this.now = now;
        lastHappened = batch.stuckAt();
        lastRecorded = batch.recordedAt();
    }

    /** Someone at work sees to it soon after {@code notBefore}: the moment it happens, later than all before. */
    Instant look(Instant notBefore) {
        Instant earliest = later(notBefore, lastHappened.plus(BETWEEN_ENTRIES));
        return hours.notBefore(hours.notBefore(earliest).plus(Duration.ofMinutes(random.nextInt(100))));
    }

    /** Writes down what happened; empty if that is recorded only after the demo starts. */
    Optional<DemoEntry> write(Instant happenedAt, What what, @Nullable String note) {
        Instant recordedAt = later(happenedAt.plus(delay()), lastRecorded.plusSeconds(60));
        if (recordedAt.isAfter(now)) {
            return Optional.empty();
        }
        lastHappened = later(lastHappened, happenedAt);
        lastRecorded = recordedAt;
        return Optional.of(put(happenedAt, recordedAt, what, note));
    }

    /** Writes down something that stayed on paper until after everything recorded so far. */
    void writeFromPaper(Instant happenedAt, What what) {
        Instant recordedAt = lastRecorded.plus(Duration.ofMinutes(90));
        if (!recordedAt.isAfter(now)) {
            lastRecorded = recordedAt;
            put(happenedAt, recordedAt, what, "from paper");
        }
    }

    List<DemoEntry> inOrderRecorded() {
        return entries.stream()
                .sorted(Comparator.comparing(DemoEntry::recordedAt))
                .toList();
    }

    private DemoEntry put(Instant happenedAt, Instant recordedAt, What what, @Nullable String note) {
        String name = "demo " + batch + " entry " + (entries.size() + 1);
        String person = "%s grower %d".formatted(site, 1 + random.nextInt(3));
        DemoEntry entry = new DemoEntry(idOf(name), batch, happenedAt, recordedAt, person, what, note);
        entries.add(entry);
        return entry;
    }

    static UUID idOf(String name) {
        return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
    }

    /** Most entries are made on the spot, one in eight after the round. */
    private Duration delay() {
        boolean onTheSpot = random.nextInt(8) != 0;
        return Duration.ofSeconds(onTheSpot ? 60 + random.nextInt(900) : 3600 + random.nextInt(7200));
    }

    private static Instant later(Instant one, Instant other) {
        return one.isAfter(other) ? one : other;
    }
}
