package rootcast.rounds;

import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import rootcast.crop.CommonPractice;
import rootcast.crop.MistNeed;
import rootcast.crop.Stage;
import rootcast.crop.TrayFormat;
import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;
import rootcast.ledger.BatchFold;
import rootcast.ledger.Entry;
import rootcast.ledger.What;
import rootcast.outlook.DateRange;
import rootcast.site.Site;

/** House H1 in a zone one hour ahead of UTC, with batches stuck on Monday 2 March 2026 at 10:00 UTC unless said otherwise. */
public final class OneHouse {

    public static final String HOUSE = "H1";
    public static final Site SITE = new Site("S", "Site", ZoneId.of("Etc/GMT-1"), DayOfWeek.MONDAY);
    public static final Instant STUCK = Instant.parse("2026-03-02T10:00:00Z");
    public static final LocalDate STUCK_ON = LocalDate.of(2026, 3, 2);

    private static final TrayFormat FORMAT = new TrayFormat("T100", 100, 90, 540, 280);

    private final List<BatchCare> batches = new ArrayList<>();
    private final List<Care> cares = new ArrayList<>();
    private final List<Treatment> treatments = new ArrayList<>();
    private boolean dryAir;
    private boolean ecMeasured;

    public static Instant day(double days) {
        return STUCK.plus(Duration.ofMinutes(Math.round(days * 24 * 60)));
    }

    /** A batch being written down. */
    public static final class Story {
        private final Batch batch;
        private final List<Entry> entries = new ArrayList<>();
        private long position;

        private Story(String id, Instant stuckAt, String house) {
            batch = new Batch(id, SITE.code(), "var", FORMAT, stuckAt);
            write(stuckAt, new What.Stick(house, 10, 1_000));
        }

        public static Story of(String id, Instant stuckAt) {
            return of(id, stuckAt, HOUSE);
        }

        public static Story of(String id, Instant stuckAt, String house) {
            return new Story(id, stuckAt, house);
        }

        public Story reached(Stage stage, Instant at) {
            return write(at, new What.StageReached(stage));
        }

        public Story write(Instant at, What what) {
            position++;
            entries.add(new Entry(
                    new UUID(0, position), new FactPosition(position), batch.id(), at, at, "test", what, null));
            return this;
        }

        /** Expected to callus from day 5, to root from day 12, to be ready from day 20; medium mist. */
        public BatchCare care() {
            return care(null);
        }

        /** With a house stated that batches go on to. */
        public BatchCare care(MoveOn next, Map<String, Treatment> closed) {
            BatchCare care = care();
            return new BatchCare(
                    care.state(),
                    care.recipe(),
                    care.expected(),
                    care.move(),
                    next.adviceFor(care.state(), closed).orElse(null));
        }

        public BatchCare care(BatchCare.@Nullable MoveAdvice move) {
            Instant stuck = batch.stuckAt();
            return new BatchCare(
                    BatchFold.of(batch, entries).state(),
                    CommonPractice.recipe(MistNeed.MEDIUM),
                    new BatchCare.Expected(range(stuck, 5), range(stuck, 12), range(stuck, 20)),
                    move,
                    null);
        }

        private static DateRange range(Instant stuck, int days) {
            return new DateRange(
                    stuck.plus(Duration.ofDays(days)),
                    stuck.plus(Duration.ofDays(days + 2)),
                    stuck.plus(Duration.ofDays(days + 5)));
        }
    }

    public OneHouse with(Story story) {
        batches.add(story.care());
        return this;
    }

    public OneHouse with(BatchCare batch) {
        batches.add(batch);
        return this;
    }

    public OneHouse closed(RoundItem item, boolean done, Instant at) {
        cares.add(new Care(item.id(), item.task(), HOUSE, item.batch(), item.dueOn(), done, at, null));
        return this;
    }

    public OneHouse with(Treatment treatment) {
        treatments.add(treatment);
        return this;
    }

    public OneHouse dryAir() {
        dryAir = true;
        return this;
    }

    public OneHouse ecMeasured() {
        ecMeasured = true;
        return this;
    }

    public List<RoundItem> round(int day) {
        return round(day, day(day));
    }

    public List<RoundItem> round(int day, Instant now) {
        return Rounds.of(
                SITE,
                new HouseCare(HOUSE, batches, cares, treatments, dryAir, ecMeasured),
                Rhythm.USUAL,
                STUCK_ON.plusDays(day),
                now);
    }

    /** The only item of its kind on that day. */
    public RoundItem item(int day, Task task) {
        List<RoundItem> found =
                round(day).stream().filter(item -> item.task() == task).toList();
        if (found.size() != 1) {
            throw new AssertionError(task + " on day " + day + ": " + found);
        }
        return found.get(0);
    }

    public boolean asks(int day, Task task) {
        return round(day).stream().anyMatch(item -> item.task() == task);
    }
}
