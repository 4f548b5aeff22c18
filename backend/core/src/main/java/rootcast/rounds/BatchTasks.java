package rootcast.rounds;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Band;
import rootcast.crop.MistRegime;
import rootcast.crop.Phase;
import rootcast.crop.Stage;
import rootcast.crop.StageRecipe;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.DateRange;
import rootcast.saying.Saying;
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
                        firstDay(Task.ARRIVAL_CHECK, Why.NOTE_HOW_IT_CAME),
                        firstDay(Task.WETTING_AGENT, Why.RIGHT_AFTER_STICKING),
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
    private Optional<Due> firstDay(Task task, Why why) {
        LocalDate stuck = site.dayOf(batch.stuckAt());
        boolean past = site.dayOf(endOfDay.minusMillis(1)).isAfter(stuck.plusDays(rhythm.arrivalWithin()));
        return past ? Optional.empty() : Optional.of(Due.of(task, batch, "", stuck, Saying.of(why)));
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
        Saying why = tries.isEmpty()
                ? Saying.of(Why.ONE_IN_TEN_BY_NOW, wanted.name())
                : Saying.of(Why.LOOKED_AND_NOT_YET, tries.size(), wanted.name());
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
        return Optional.of(Due.of(task, batch, "", startOf(phase), Saying.of(Why.WENT_INTO_PHASE, phase.name())));
    }

    /** Where the phase asks for other nitrogen than the one before it. */
    private Optional<Due> feedStep() {
        Phase phase = batch.phaseAt(endOfDay);
        Band nitrogen = batch.recipe().of(phase).nitrogenPpm();
        if (phase == Phase.STICKING || nitrogen.equals(previous(phase).nitrogenPpm())) {
            return Optional.empty();
        }
        Saying why = Saying.of(Why.RECIPE_NITROGEN, end(nitrogen.least()), end(nitrogen.most()), phase.name());
        return Optional.of(Due.of(Task.FEED_STEP, batch, phase.name().toLowerCase(Locale.ROOT), startOf(phase), why));
    }

    /** Daily without roots and after a day of dry air, otherwise less often. */
    private Optional<Due> moistureCheck() {
        boolean daily = house.dryAir() || !batch.hasReached(Stage.CALLUS);
        int days = daily ? rhythm.moistureUntilCallus() : rhythm.moistureLater();
        LocalDate last = lastCare(Task.MOISTURE_CHECK).orElseGet(() -> site.dayOf(batch.stuckAt()));
        Band level = batch.recipe().of(batch.phaseAt(endOfDay)).moistureLevel();
        Saying why = Saying.of(
                house.dryAir() ? Why.RECIPE_MOISTURE_DRY_AIR : Why.RECIPE_MOISTURE,
                end(level.least()),
                end(level.most()));
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
                Saying.of(
                        Why.PREVENTION_DUE_BY, stuck.plusDays(rhythm.preventionWithin()), rhythm.preventionWithin())));
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
        Saying why = counted.map(day -> Saying.of(Why.LAST_COUNTED, day)).orElse(Saying.of(Why.NOT_COUNTED));
        return Optional.of(Due.of(Task.COUNT, batch, dueOn.toString(), dueOn, why));
    }

    /** Where its house's batches go on to; if that is not due, or was closed already, where it clashes with nobody. */
    private Optional<Due> move() {
        BatchCare.MoveAdvice usual = batch.usual();
        if (usual != null) {
            String occurrence = "usual.%s.%s".formatted(house.house(), String.join(".", usual.to()));
            Due due = Due.move(batch, occurrence, site.dayOf(usual.since()), usual);
            if (house.cares().stream().noneMatch(care -> care.item().equals(due.id()))) {
                return Optional.of(due);
            }
        }
        BatchCare.MoveAdvice advice = batch.move();
        return advice == null
                ? Optional.empty()
                : Optional.of(Due.move(batch, house.house(), site.dayOf(advice.since()), advice));
    }

    private Optional<Due> tone() {
        return batch.phaseAt(endOfDay) == Phase.TONING
                ? Optional.of(Due.of(Task.TONE, batch, "", startOf(Phase.TONING), Saying.of(Why.TONE_NOT_STUNT)))
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

    /** Null where the recipe leaves the end open. */
    private static @Nullable Double end(double value) {
        return Double.isInfinite(value) ? null : value;
    }
}
