package rootcast.warnings;

import java.util.List;
import java.util.Locale;
import rootcast.rounds.Task;

/**
 * The mistakes that are watched for, with how many bad hours raise the warning and how many good hours end it.
 *
 * <p>Good hours are 24 for what comes back with the day (sun, cold nights), so that one fault is one warning. The
 * thresholds are common practice and have no source.
 */
public enum WarningKind {
    /** The air dries cuttings without roots: too little humidity or too great a deficit. */
    DRY_DOWN(3, 24),
    /** The medium is drier than the recipe allows. */
    MEDIUM_DRY(4, 6),
    /** Humidity or moisture too high for long while mist runs. */
    OVER_MISTING(12, 6),
    /** Free water in the medium while roots form or fill the cell. */
    MEDIUM_SATURATED(6, 6),
    MEDIUM_COLD(3, 24),
    /** Night air below the recipe. */
    AIR_COLD(3, 24),
    LIGHT_HIGH(2, 24),
    /** Air too humid for a day and a night around plants that are no longer under mist: rot begins at every stage. */
    AIR_WET(24, 6),
    /** Callused, and the nights stay as wet as under mist. Only night hours count. */
    NIGHT_MIST_ON(6, 6),
    /** Callused, and nobody has said that mist was weaned or taken off at night. */
    MIST_NOT_WEANED(1, 1),
    /** Rooted, and the salts of the medium lie below the recipe: mist and watering washed the food out. */
    LEACHED(4, 6),
    /** Rooted, and nobody has said that it was fed. */
    NO_FEED(1, 1),
    SCOUTING_MISSED(1, 1),
    PREVENTION_MISSED(1, 1),
    /** A quantity that was measured is not measured any more. */
    NO_READINGS(3, 1);

    private final Hysteresis hysteresis;

    WarningKind(int raiseAfterHours, int clearAfterHours) {
        hysteresis = new Hysteresis(raiseAfterHours, clearAfterHours);
    }

    Hysteresis hysteresis() {
        return hysteresis;
    }

    /** The checks of a round that settle it; empty for what only the climate settles. */
    public List<Task> settledBy() {
        return switch (this) {
            case MEDIUM_DRY, MEDIUM_SATURATED, OVER_MISTING -> List.of(Task.MOISTURE_CHECK);
            case MIST_NOT_WEANED -> List.of(Task.WEAN_MIST, Task.NIGHT_MIST_OFF, Task.MIST_OFF);
            case LEACHED -> List.of(Task.FEED_STEP, Task.EC_CHECK);
            case NO_FEED -> List.of(Task.FEED_STEP);
            case SCOUTING_MISSED -> List.of(Task.SCOUTING);
            case PREVENTION_MISSED -> List.of(Task.PREVENTION);
            default -> List.of();
        };
    }

    public String wireName() {
        return name().toLowerCase(Locale.ROOT).replace('_', '-');
    }
}
