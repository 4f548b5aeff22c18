package rootcast.rounds;

import java.time.Instant;
import java.time.LocalDate;
import java.util.EnumSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import rootcast.crop.Phase;
import rootcast.ledger.BatchState;
import rootcast.saying.Saying;
import rootcast.site.Site;

/** The rules for a house as a whole. */
final class HouseTasks {

    private HouseTasks() {}

    static Stream<Due> all(Site site, HouseCare house, Rhythm rhythm, Instant endOfDay) {
        return Stream.of(
                        scouting(site, house, rhythm),
                        draught(site, house, rhythm, endOfDay),
                        ecCheck(site, house, rhythm, endOfDay))
                .flatMap(Optional::stream);
    }

    /** While cuttings are fresh: from the day on which the first of them came in, then again every few days. */
    private static Optional<Due> draught(Site site, HouseCare house, Rhythm rhythm, Instant endOfDay) {
        return firstOf(site, house, endOfDay, EnumSet.of(Phase.STICKING))
                .map(came -> due(
                        house,
                        Task.DRAUGHT_LOOK,
                        again(site, house, Task.DRAUGHT_LOOK, came, rhythm.draughtAgain()),
                        Why.MOVING_AIR_DRIES));
    }

    /** Once roots are there and nothing measures the salts: feed and mist wash them in and out unseen. */
    private static Optional<Due> ecCheck(Site site, HouseCare house, Rhythm rhythm, Instant endOfDay) {
        return house.ecMeasured()
                ? Optional.empty()
                : firstOf(site, house, endOfDay, EnumSet.of(Phase.FILLING, Phase.TONING))
                        .map(rooted -> due(
                                house,
                                Task.EC_CHECK,
                                again(site, house, Task.EC_CHECK, rooted, rhythm.ecAgain()),
                                Why.SALTS_UNMEASURED));
    }

    /** The day on which the first batch in one of the phases came into it or into the house, whichever was later. */
    private static Optional<LocalDate> firstOf(Site site, HouseCare house, Instant endOfDay, Set<Phase> phases) {
        return house.batches().stream()
                .filter(batch -> phases.contains(batch.phaseAt(endOfDay)))
                .map(batch -> {
                    Instant phase = phases.stream()
                            .map(batch::startOf)
                            .flatMap(Optional::stream)
                            .min(Instant::compareTo)
                            .orElse(batch.stuckAt());
                    Instant came = cameIn(batch.state());
                    return phase.isAfter(came) ? phase : came;
                })
                .min(Instant::compareTo)
                .map(site::dayOf);
    }

    private static LocalDate again(Site site, HouseCare house, Task task, LocalDate first, int days) {
        return lastOf(site, house.house(), house.cares(), task)
                .filter(day -> !day.isBefore(first))
                .map(day -> day.plusDays(days))
                .orElse(first);
    }

    private static Due due(HouseCare house, Task task, LocalDate dueOn, Why why) {
        return new Due(task.wireName() + "." + house.house() + "." + dueOn, null, task, dueOn, Saying.of(why));
    }

    private static Optional<LocalDate> lastOf(Site site, String house, List<Care> cares, Task task) {
        return cares.stream()
                .filter(care -> care.task() == task && care.house().equals(house))
                .map(care -> site.dayOf(care.at()))
                .max(LocalDate::compareTo);
    }

    /** The day after the first of its batches came in, then weekly: fungus gnats and shore flies, traps counted. */
    private static Optional<Due> scouting(Site site, HouseCare house, Rhythm rhythm) {
        return scoutingDue(site, house.house(), house.batches(), house.cares(), rhythm)
                .map(dueOn -> due(house, Task.SCOUTING, dueOn, Why.READ_THE_TRAPS));
    }

    /** A skipped walk counts as the day it was skipped, so that it is asked for again a week later. */
    static Optional<LocalDate> scoutingDue(
            Site site, String house, List<BatchCare> batches, List<Care> cares, Rhythm rhythm) {
        Optional<LocalDate> last = lastOf(site, house, cares, Task.SCOUTING);
        Optional<LocalDate> first = batches.stream()
                .map(batch -> cameIn(batch.state()))
                .min(Instant::compareTo)
                .map(site::dayOf);
        return first.map(came -> last.filter(day -> !day.isBefore(came))
                .map(day -> day.plusDays(rhythm.scouting()))
                .orElse(came.plusDays(1)));
    }

    private static Instant cameIn(BatchState state) {
        return state.placements().get(state.placements().size() - 1).fromInclusive();
    }
}
