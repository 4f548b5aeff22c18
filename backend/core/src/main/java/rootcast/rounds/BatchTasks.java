package rootcast.rounds;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import rootcast.crop.Band;
import rootcast.crop.MistRegime;
import rootcast.crop.Phase;
import rootcast.crop.Stage;
import rootcast.crop.StageRecipe;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.DateRange;
import rootcast.site.Site;

/**
 * The rules for one batch, one a method. Each gives the next thing of its kind, due whenever it is due; the caller sorts
 * out what lies ahead and what was done.
 */
final class BatchTasks {

    private final Site site;
    private final BatchCare batch;
    private final HouseCare house;
    private final Rhythm rhythm;
    private final Instant endOfDay;

    /** @param endOfDay of the day that is asked about: phases are as they will be by then */
    BatchTasks(Site site, BatchCare batch, HouseCare house, Rhythm rhythm, Instant endOfDay) {
        this.site = site;
        this.batch = batch;
        this.house = house;
        this.rhythm = rhythm;
        this.endOfDay = endOfDay;
    }

    Stream<Due> all() {
        return Stream.of(
                        firstDay(Task.ARRIVAL_CHECK, "Warm, wilted or late boxes root worse: note how it came."),
                        firstDay(
                                Task.WETTING_AGENT,
                                "Right after sticking, over the leaves. Product and rate: label and local law."),
                        look(
                                Task.LOOK_CALLUS,
                                Stage.CALLUS,
                                Stage.STICK,
                                batch.expected().callusedAt()),
                        look(
                                Task.LOOK_ROOT,
                                Stage.ROOT,
                                Stage.CALLUS,
                                batch.expected().rootedAt()),
                        look(
                                Task.READY,
                                Stage.READY,
                                Stage.ROOT,
                                batch.expected().readyAt()),
                        mist(),
                        feedStep(),
                        moistureCheck(),
                        prevention(),
                        count(),
                        move(),
                        tone())
                .flatMap(Optional::stream);
    }

    /** On the day of sticking and shortly after; then it is past mending. */
    private Optional<Due> firstDay(Task task, String why) {
        LocalDate stuck = site.dayOf(batch.stuckAt());
        boolean past = site.dayOf(endOfDay.minusMillis(1)).isAfter(stuck.plusDays(rhythm.arrivalWithin()));
        return past ? Optional.empty() : Optional.of(Due.of(task, batch, "", stuck, why));
    }

    /** From the day on which one batch in ten would be so far, then again every few days until it is. */
    private Optional<Due> look(Task task, Stage wanted, Stage before, DateRange expected) {
        if (batch.hasReached(wanted) || !batch.hasReached(before)) {
            return Optional.empty();
        }
        List<Instant> tries = Stream.concat(
                        batch.state().looks().stream()
                                .filter(look -> look.stage() == wanted)
                                .map(look -> look.at()),
                        house.cares().stream()
                                .filter(care -> care.isOf(task, batch.id()) && !care.done())
                                .map(Care::at))
                .sorted()
                .toList();
        if (tries.isEmpty() && expected.p10().equals(DateDistribution.NEVER)) {
            return Optional.empty();
        }
        LocalDate dueOn = tries.isEmpty()
                ? site.dayOf(expected.p10())
                : site.dayOf(tries.get(tries.size() - 1)).plusDays(rhythm.lookAgain());
        String why = tries.isEmpty()
                ? "One batch in ten would be %s by now.".formatted(words(wanted))
                : "Looked at %d times and not yet %s.".formatted(tries.size(), words(wanted));
        return Optional.of(Due.of(task, batch, String.valueOf(tries.size() + 1), dueOn, why));
    }

    /** Where the phase asks for less mist than the one before it. */
    private Optional<Due> mist() {
        Phase phase = batch.phaseAt(endOfDay);
        MistRegime now = batch.recipe().of(phase).mist();
        if (phase == Phase.STICKING || now == previous(phase).mist() || now == MistRegime.RUNNING) {
            return Optional.empty();
        }
        Task task = switch (now) {
            case WEANING -> Task.WEAN_MIST;
            case NIGHT_OFF -> Task.NIGHT_MIST_OFF;
            default -> Task.MIST_OFF;
        };
        return Optional.of(Due.of(task, batch, "", startOf(phase), "The batch went into " + words(phase) + "."));
    }

    /** Where the phase asks for other nitrogen than the one before it. */
    private Optional<Due> feedStep() {
        Phase phase = batch.phaseAt(endOfDay);
        Band nitrogen = batch.recipe().of(phase).nitrogenPpm();
        if (phase == Phase.STICKING || nitrogen.equals(previous(phase).nitrogenPpm())) {
            return Optional.empty();
        }
        String why = "The recipe asks for %.0f to %.0f ppm nitrogen in %s."
                .formatted(nitrogen.least(), nitrogen.most(), words(phase));
        return Optional.of(Due.of(Task.FEED_STEP, batch, phase.name().toLowerCase(Locale.ROOT), startOf(phase), why));
    }

    /** Daily without roots and after a day of dry air, otherwise less often. */
    private Optional<Due> moistureCheck() {
        boolean daily = house.dryAir() || !batch.hasReached(Stage.CALLUS);
        int days = daily ? rhythm.moistureUntilCallus() : rhythm.moistureLater();
        LocalDate last = lastCare(Task.MOISTURE_CHECK).orElseGet(() -> site.dayOf(batch.stuckAt()));
        Band level = batch.recipe().of(batch.phaseAt(endOfDay)).moistureLevel();
        String why = "Moisture should be %.0f to %.0f of 5%s."
                .formatted(level.least(), level.most(), house.dryAir() ? "; the air has been dry" : "");
        LocalDate dueOn = last.plusDays(days);
        return Optional.of(Due.of(Task.MOISTURE_CHECK, batch, dueOn.toString(), dueOn, why));
    }

    /** In the first week; a recorded treatment for prevention ends it, and so does twice the time gone by. */
    private Optional<Due> prevention() {
        LocalDate stuck = site.dayOf(batch.stuckAt());
        boolean past = site.dayOf(endOfDay.minusMillis(1)).isAfter(stuck.plusDays(2L * rhythm.preventionWithin()));
        if (past || isPrevented()) {
            return Optional.empty();
        }
        return Optional.of(Due.of(
                Task.PREVENTION,
                batch,
                "",
                stuck.plusDays(1),
                "Due by %s, %d days after sticking. Product and rate: label and local law."
                        .formatted(stuck.plusDays(rhythm.preventionWithin()), rhythm.preventionWithin())));
    }

    private boolean isPrevented() {
        return house.treatments().stream().anyMatch(treatment -> treatment.prevents(batch.state()));
    }

    /** Now and then, and once when the batch is ready, before its trays are promised and sold. */
    private Optional<Due> count() {
        Optional<LocalDate> counted = Stream.of(
                        Optional.ofNullable(batch.state().fullCount()).map(count -> site.dayOf(count.at())),
                        Optional.ofNullable(batch.state().sampledCount()).map(count -> site.dayOf(count.at())),
                        lastCare(Task.COUNT))
                .flatMap(Optional::stream)
                .max(LocalDate::compareTo);
        LocalDate dueOn = counted.map(day -> day.plusDays(rhythm.countAgain()))
                .orElseGet(() -> site.dayOf(batch.stuckAt()).plusDays(rhythm.firstCount()));
        Optional<LocalDate> ready = batch.state().reached(Stage.READY).map(site::dayOf);
        boolean countedReady =
                ready.isEmpty() || counted.isPresent() && !counted.get().isBefore(ready.get());
        if (!countedReady && ready.get().isBefore(dueOn)) {
            dueOn = ready.get();
        }
        String why = counted.map(day -> "Last counted on " + day + ".").orElse("Not counted yet.");
        return Optional.of(Due.of(Task.COUNT, batch, dueOn.toString(), dueOn, why));
    }

    private Optional<Due> move() {
        BatchCare.MoveAdvice advice = batch.move();
        return advice == null
                ? Optional.empty()
                : Optional.of(Due.of(Task.MOVE, batch, house.house(), site.dayOf(advice.since()), advice.why()));
    }

    private Optional<Due> tone() {
        return batch.phaseAt(endOfDay) == Phase.TONING
                ? Optional.of(Due.of(Task.TONE, batch, "", startOf(Phase.TONING), "Tone, do not stunt."))
                : Optional.empty();
    }

    private Optional<LocalDate> lastCare(Task task) {
        return house.cares().stream()
                .filter(care -> care.isOf(task, batch.id()))
                .map(care -> site.dayOf(care.at()))
                .max(LocalDate::compareTo);
    }

    private LocalDate startOf(Phase phase) {
        return site.dayOf(batch.startOf(phase).orElseThrow());
    }

    private StageRecipe previous(Phase phase) {
        return batch.recipe().of(Phase.values()[phase.ordinal() - 1]);
    }

    private static String words(Stage stage) {
        return switch (stage) {
            case STICK -> "stuck";
            case CALLUS -> "callused";
            case ROOT -> "rooted";
            case READY -> "ready";
            case SHIP -> "shipped";
        };
    }

    private static String words(Phase phase) {
        return phase.name().toLowerCase(Locale.ROOT);
    }
}
