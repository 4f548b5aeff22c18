package rootcast.rounds;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import rootcast.ledger.BatchState;
import rootcast.site.Site;

/** The rules for a house as a whole. */
final class HouseTasks {

    private HouseTasks() {}

    /** The day after the first of its batches came in, then weekly: fungus gnats and shore flies, traps counted. */
    static Optional<Due> scouting(Site site, HouseCare house, Rhythm rhythm) {
        return scoutingDue(site, house.house(), house.batches(), house.cares(), rhythm)
                .map(dueOn -> new Due(
                        Task.SCOUTING.wireName() + "." + house.house() + "." + dueOn,
                        null,
                        Task.SCOUTING,
                        dueOn,
                        "Look under leaves and read the traps: fungus gnats and shore flies."));
    }

    /** A skipped walk counts as the day it was skipped, so that it is asked for again a week later. */
    static Optional<LocalDate> scoutingDue(
            Site site, String house, List<BatchCare> batches, List<Care> cares, Rhythm rhythm) {
        Optional<LocalDate> last = cares.stream()
                .filter(care -> care.task() == Task.SCOUTING && care.house().equals(house))
                .map(care -> site.dayOf(care.at()))
                .max(LocalDate::compareTo);
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
