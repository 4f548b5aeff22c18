package rootcast.warnings;

import java.time.Duration;
import java.time.Instant;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Collectors;
import rootcast.crop.Phase;
import rootcast.crop.Stage;
import rootcast.ledger.BatchState;
import rootcast.rounds.Care;
import rootcast.rounds.Rhythm;
import rootcast.rounds.Task;
import rootcast.warnings.ResidentBatches.Resident;

/**
 * What was left undone by a moment, one rule a method. A skipped item counts as dealt with: somebody gave a reason.
 *
 * <p>Days of grace are common practice and have no source.
 */
final class CareRules {

    private static final Duration WEANING_GRACE = Duration.ofDays(2);
    private static final Duration FEED_GRACE = Duration.ofDays(3);
    private static final Duration SCOUTING_GRACE = Duration.ofDays(2);

    /** So many hours in a row nobody reads by hand. */
    private static final int HOURS_OF_A_PROBE = 6;

    private final Watched house;
    private final ResidentBatches residents;
    private final Rhythm rhythm;
    /** A site has many records and every hour asks for those of one batch. */
    private final Map<String, List<Care>> careOf;

    private final List<Instant> scoutedAt;
    private final Map<Measured, Long> firstMeasured = new EnumMap<>(Measured.class);

    CareRules(Watched house, ResidentBatches residents, Rhythm rhythm, long fromHour, long untilHour) {
        this.house = house;
        this.residents = residents;
        this.rhythm = rhythm;
        careOf =
                house.cares().stream().filter(care -> care.batch() != null).collect(Collectors.groupingBy(Care::batch));
        scoutedAt = house.cares().stream()
                .filter(care -> care.task() == Task.SCOUTING && care.house().equals(house.house()))
                .map(Care::at)
                .toList();
        for (Measured measured : Measured.values()) {
            int inARow = 0;
            for (long hour = fromHour; hour < untilHour && inARow < HOURS_OF_A_PROBE; hour++) {
                inARow = Double.isNaN(house.hours().at(measured, hour)) ? 0 : inARow + 1;
                if (inARow == HOURS_OF_A_PROBE) {
                    firstMeasured.put(measured, hour);
                }
            }
        }
    }

    Sign mistNotWeaned(String batch, Instant now, List<Resident> present) {
        return of(batch, present)
                .filter(resident -> longAfter(resident, Stage.CALLUS, WEANING_GRACE, now))
                .filter(resident -> weanedTo(batch, now)
                        < resident.recipe().of(Phase.ROOTING).mist().ordinal())
                .map(resident -> Sign.bad(List.of(batch)))
                .orElse(Sign.FINE);
    }

    /** The least mist that anybody has recorded for the batch, as the ordinal of its regime. */
    private int weanedTo(String batch, Instant now) {
        return careOf.getOrDefault(batch, List.of()).stream()
                .filter(care -> !care.at().isAfter(now))
                .mapToInt(care -> switch (care.task()) {
                    case WEAN_MIST -> 1;
                    case NIGHT_MIST_OFF -> 2;
                    case MIST_OFF -> 3;
                    default -> 0;
                })
                .max()
                .orElse(0);
    }

    Sign noFeed(String batch, Instant now, List<Resident> present) {
        return of(batch, present)
                .filter(resident -> longAfter(resident, Stage.ROOT, FEED_GRACE, now))
                .filter(resident ->
                        resident.recipe().of(Phase.FILLING).nitrogenPpm().least() > 0)
                .filter(resident -> lastCare(Task.FEED_STEP, batch, now).isEmpty())
                .map(resident -> Sign.bad(List.of(batch)))
                .orElse(Sign.FINE);
    }

    /** For a week after the day by which it was due; then it is past mending. */
    Sign preventionMissed(String batch, Instant now, List<Resident> present) {
        return of(batch, present)
                .filter(resident -> {
                    Instant due = resident.state().batch().stuckAt().plus(Duration.ofDays(rhythm.preventionWithin()));
                    return !now.isBefore(due) && now.isBefore(due.plus(Duration.ofDays(rhythm.preventionWithin())));
                })
                .filter(resident -> lastCare(Task.PREVENTION, batch, now).isEmpty() && !wasTreated(resident, now))
                .map(resident -> Sign.bad(List.of(batch)))
                .orElse(Sign.FINE);
    }

    private boolean wasTreated(Resident resident, Instant now) {
        return house.treatments().stream()
                .anyMatch(treatment -> !treatment.appliedAt().isAfter(now) && treatment.prevents(resident.state()));
    }

    Sign scoutingMissed(Instant now, List<Resident> present) {
        Optional<Instant> cameIn =
                present.stream().map(resident -> cameIn(resident.state(), now)).min(Instant::compareTo);
        if (cameIn.isEmpty()) {
            return Sign.FINE;
        }
        Instant deadline = scoutedAt.stream()
                .filter(at -> !at.isAfter(now) && !at.isBefore(cameIn.get()))
                .max(Instant::compareTo)
                .map(last -> last.plus(Duration.ofDays(rhythm.scouting())))
                .orElse(cameIn.get().plus(Duration.ofDays(1)))
                .plus(SCOUTING_GRACE);
        return now.isBefore(deadline) ? Sign.FINE : Sign.bad(ResidentBatches.names(present));
    }

    /** Only of what a probe measured before: a house without one, or read by hand, is not at fault every hour. */
    Sign noReadings(Measured measured, long hour) {
        Long first = firstMeasured.get(measured);
        if (first == null || hour < first || residents.at(hour).isEmpty()) {
            return Sign.FINE;
        }
        return Double.isNaN(house.hours().at(measured, hour))
                ? Sign.bad(ResidentBatches.names(residents.at(hour)))
                : Sign.FINE;
    }

    private static Optional<Resident> of(String batch, List<Resident> present) {
        for (Resident resident : present) {
            if (resident.batch().equals(batch)) {
                return Optional.of(resident);
            }
        }
        return Optional.empty();
    }

    private Optional<Instant> lastCare(Task task, String batch, Instant now) {
        return careOf.getOrDefault(batch, List.of()).stream()
                .filter(care -> care.task() == task && !care.at().isAfter(now))
                .map(Care::at)
                .max(Instant::compareTo);
    }

    private static boolean longAfter(Resident resident, Stage stage, Duration grace, Instant now) {
        return resident.state().reachedAt().entrySet().stream()
                .filter(reached -> !stage.isAfter(reached.getKey()))
                .map(Map.Entry::getValue)
                .min(Instant::compareTo)
                .filter(at -> !now.isBefore(at.plus(grace)))
                .isPresent();
    }

    private static Instant cameIn(BatchState state, Instant now) {
        Instant came = state.batch().stuckAt();
        for (BatchState.Placement placement : state.placements()) {
            came = placement.fromInclusive().isAfter(now) ? came : placement.fromInclusive();
        }
        return came;
    }
}
