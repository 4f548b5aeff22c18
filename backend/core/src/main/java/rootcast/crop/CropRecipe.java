package rootcast.crop;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;

/**
 * What a crop is to have from sticking to a ready liner, phase by phase.
 *
 * <p>Which phase a batch is in follows from what was seen of it, never from a forecast: mist is taken off plants that
 * somebody looked at.
 *
 * @param fullMistDays         days from sticking in phase STICKING, unless callus comes first
 * @param toneAfterDays        days from rooted to toning, unless the batch is ready first
 * @param lowLightMol          daily light below which {@code lowLightMediumLeastC} holds, mol·m⁻²·d⁻¹
 * @param lowLightMediumLeastC least medium temperature until rooted where light is low, °C
 * @param phases               all phases in order
 */
public record CropRecipe(
        MistNeed mistNeed,
        int fullMistDays,
        int toneAfterDays,
        double lowLightMol,
        double lowLightMediumLeastC,
        List<StageRecipe> phases) {

    public CropRecipe {
        phases = List.copyOf(phases);
        if (!phases.stream().map(StageRecipe::phase).toList().equals(List.of(Phase.values()))) {
            throw new FaultyValue(
                    "phases",
                    phases.stream().map(StageRecipe::phase).toList(),
                    Fault.NOT_THE_PHASES,
                    List.of(Phase.values()));
        }
        within("fullMistDays", fullMistDays, 0, 60);
        within("toneAfterDays", toneAfterDays, 0, 120);
        within("lowLightMol", lowLightMol, 0, 60);
        within("lowLightMediumLeastC", lowLightMediumLeastC, -10, 60);
    }

    public StageRecipe of(Phase phase) {
        return phases.get(phase.ordinal());
    }

    /** The same with another medium temperature until rooted; the least for low light follows if it would lie below. */
    public CropRecipe withMediumUntilRooted(Band mediumC) {
        return new CropRecipe(
                mistNeed,
                fullMistDays,
                toneAfterDays,
                lowLightMol,
                Math.max(lowLightMediumLeastC, mediumC.least()),
                phases.stream()
                        .map(recipe ->
                                recipe.phase().compareTo(Phase.FILLING) < 0 ? recipe.withMedium(mediumC) : recipe)
                        .toList());
    }

    /** @param reachedAt when CALLUS, ROOT and READY were seen; a stage that nobody entered is absent */
    public Phase phaseAt(Instant stuckAt, Map<Stage, Instant> reachedAt, Instant at) {
        Phase phase = Phase.STICKING;
        for (Phase next : Phase.values()) {
            Optional<Instant> start = startOf(next, stuckAt, reachedAt);
            if (start.isPresent() && !start.get().isAfter(at)) {
                phase = next;
            }
        }
        return phase;
    }

    /** When the phase began or will begin by what was seen; empty if that is not known or it was passed over. */
    public Optional<Instant> startOf(Phase phase, Instant stuckAt, Map<Stage, Instant> reachedAt) {
        Instant callused = reachedAt.get(Stage.CALLUS);
        Instant rooted = reachedAt.get(Stage.ROOT);
        Instant ready = reachedAt.get(Stage.READY);
        return switch (phase) {
            case STICKING -> Optional.of(stuckAt);
            case CALLUSING -> before(days(stuckAt, fullMistDays), earliest(callused, rooted, ready));
            case ROOTING -> before(callused, earliest(rooted, ready));
            case FILLING -> before(rooted, ready);
            case TONING -> Optional.ofNullable(earliest(ready, rooted == null ? null : days(rooted, toneAfterDays)));
        };
    }

    private static Instant days(Instant from, int days) {
        return from.plus(Duration.ofDays(days));
    }

    private static Optional<Instant> before(@Nullable Instant start, @Nullable Instant end) {
        return start == null || end != null && !start.isBefore(end) ? Optional.empty() : Optional.of(start);
    }

    private static @Nullable Instant earliest(@Nullable Instant... instants) {
        Instant earliest = null;
        for (Instant instant : instants) {
            if (instant != null && (earliest == null || instant.isBefore(earliest))) {
                earliest = instant;
            }
        }
        return earliest;
    }

    private static void within(String field, double value, double least, double most) {
        if (!(value >= least && value <= most)) {
            throw new FaultyValue(field, value, Fault.BETWEEN, least, most);
        }
    }
}
