package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.time.Duration;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.store.Flags;
import rootcast.app.climate.store.Readings;
import rootcast.app.once.FactHead;
import rootcast.climate.FlagKind;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingRemark;
import rootcast.facts.FactPosition;
import rootcast.ledger.EntryRules;
import rootcast.saying.Saying;

/**
 * Keeps each reading once, and makes the hours it reaches anew.
 *
 * <p>A second value for the same sensor and moment is set aside and the first one stays: which of two is right is for a
 * person to say. So are impossible values and times still to come. What is set aside is kept and shown, and a person may
 * bring it in.
 */
@ApplicationScoped
public class RecordReadings {

    /** Later than this after it was measured, a reading is marked late. */
    private static final Duration LATE = Duration.ofHours(6);

    private static final long OLDEST_DAYS = 5 * 365L;

    @Inject
    Readings readings;

    @Inject
    Flags flags;

    @Inject
    HouseWindows windows;

    @Inject
    FactHead head;

    /** A reading with its place in the request. */
    public record Numbered(int index, HouseReading reading) {}

    /**
     * @param reason for machines and logs
     * @param flag   what it is set aside for; null if it was not kept at all
     * @param why    what a screen says to its reader
     */
    public record Refused(
            int index, String reason, @Nullable String flag, Saying why) {
        public Refused(int index, String reason, Saying why) {
            this(index, reason, null, why);
        }
    }

    /**
     * @param refused other than those refused before
     * @param flagged readings and sensor hours that are flagged since, in the series
     */
    public record Recorded(int accepted, int duplicates, List<Refused> refused, List<FlagOfHouse> flagged) {}

    /** To be called inside {@link rootcast.app.once.Once}. */
    public Recorded record(List<Numbered> wanted, Instant recordedAt) {
        return record(wanted, recordedAt, recordedAt.minus(LATE));
    }

    /** Readings of the past that nobody expected sooner: none is marked late. To be called inside {@code Once}, too. */
    public Recorded backfill(List<Numbered> wanted, Instant recordedAt) {
        return record(wanted, recordedAt, Instant.MIN);
    }

    private Recorded record(List<Numbered> wanted, Instant recordedAt, Instant lateBefore) {
        Run run = new Run(recordedAt);
        Map<HouseQuantity, List<Numbered>> bySeries = new LinkedHashMap<>();
        for (Numbered numbered : wanted) {
            if (run.mayBeInSeries(numbered)) {
                bySeries.computeIfAbsent(numbered.reading().of(), any -> new ArrayList<>())
                        .add(numbered);
            }
        }
        windows.catchUp();
        bySeries.forEach((series, together) -> {
            for (List<Numbered> near : Nearby.grouped(together)) {
                run.take(series, near);
            }
        });
        if (!run.added.isEmpty()) {
            readings.insert(run.added, run.position(), recordedAt, lateBefore);
            windows.store(run.judged, run.position());
        }
        if (!run.aside.isEmpty()) {
            flags.setAside(run.aside, run.position());
        }
        return new Recorded(run.added.size(), run.duplicates, run.refused, run.judged.raised());
    }

    /** What one call has found so far. */
    private final class Run {
        private final Instant recordedAt;
        private final List<HouseReading> added = new ArrayList<>();
        private final List<SetAside> aside = new ArrayList<>();
        private final List<Refused> refused = new ArrayList<>();
        private final JudgedHours judged = new JudgedHours();
        private int duplicates;
        private @Nullable FactPosition position;

        Run(Instant recordedAt) {
            this.recordedAt = recordedAt;
        }

        FactPosition position() {
            if (position == null) {
                position = head.next();
            }
            return position;
        }

        boolean mayBeInSeries(Numbered numbered) {
            HouseReading reading = numbered.reading();
            var implausible = reading.quantity().refusalOf(reading.value());
            if (implausible.isPresent() && !Double.isFinite(reading.value())) {
                refused.add(new Refused(
                        numbered.index(),
                        reading.value() + " is no number",
                        Saying.of(ReadingRemark.NOT_A_NUMBER, String.valueOf(reading.value()))));
            } else if (reading.at().isBefore(recordedAt.minus(OLDEST_DAYS, ChronoUnit.DAYS))) {
                refused.add(new Refused(
                        numbered.index(),
                        reading.at() + " is over 5 years ago",
                        Saying.of(ReadingRemark.TOO_OLD, reading.at())));
            } else if (implausible.isPresent()) {
                Quantity.Implausible no = implausible.get();
                put(
                        numbered,
                        FlagKind.RANGE,
                        no.value() < no.least() ? no.least() : no.most(),
                        no.toString(),
                        Saying.of(
                                ReadingRemark.IMPLAUSIBLE,
                                no.value(),
                                no.least(),
                                no.most(),
                                reading.quantity().wireName()));
            } else if (reading.at().isAfter(recordedAt.plus(EntryRules.CLOCK_TOLERANCE))) {
                put(
                        numbered,
                        FlagKind.CLOCK_SKEW,
                        null,
                        "%s is still to come; it is %s here".formatted(reading.at(), recordedAt),
                        Saying.of(
                                ReadingRemark.CLOCK_SKEW,
                                reading.value(),
                                reading.quantity().wireName()));
            } else {
                return true;
            }
            return false;
        }

        private void put(Numbered numbered, FlagKind kind, @Nullable Double expected, String reason, Saying why) {
            aside.add(new SetAside(numbered.reading(), kind, expected, recordedAt));
            refused.add(new Refused(numbered.index(), reason, kind.wireName(), why));
        }

        /** Readings of one series that lie near each other. */
        void take(HouseQuantity series, List<Numbered> near) {
            List<Instant> moments =
                    near.stream().map(each -> each.reading().at()).toList();
            HouseWindow window = windows.around(series, moments, recordedAt);
            List<Instant> touched = new ArrayList<>();
            for (Numbered numbered : near) {
                HouseReading reading = numbered.reading();
                OptionalDouble before = window.stored(reading.sensor(), reading.at());
                if (before.isPresent() && before.getAsDouble() == reading.value()) {
                    duplicates++;
                } else if (before.isPresent()) {
                    put(
                            numbered,
                            FlagKind.DUPLICATE,
                            before.getAsDouble(),
                            "another value, %s %s, is stored for that house, quantity and moment; it stays"
                                    .formatted(
                                            before.getAsDouble(),
                                            series.quantity().unit().ucum()),
                            Saying.of(
                                    ReadingRemark.DUPLICATE,
                                    reading.value(),
                                    before.getAsDouble(),
                                    reading.quantity().wireName()));
                } else if (window.isSettled(reading.at())) {
                    refused.add(new Refused(
                            numbered.index(),
                            "the readings of that hour were summed up and purged; it can no longer be told from a repeat",
                            Saying.of(ReadingRemark.PURGED, reading.at())));
                } else {
                    window.add(reading.sensor(), reading.at(), reading.value());
                    added.add(reading);
                    touched.add(reading.at());
                }
            }
            if (!touched.isEmpty()) {
                windows.judge(window, touched, judged);
            }
        }
    }
}
