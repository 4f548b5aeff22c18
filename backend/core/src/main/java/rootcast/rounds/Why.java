package rootcast.rounds;

import static rootcast.saying.ValueKind.COUNT;
import static rootcast.saying.ValueKind.DATE;
import static rootcast.saying.ValueKind.MEASURE;
import static rootcast.saying.ValueKind.PHASE;
import static rootcast.saying.ValueKind.QUANTITIES;
import static rootcast.saying.ValueKind.STAGE;
import static rootcast.saying.ValueKind.TEXT;
import static rootcast.saying.ValueKind.TEXTS;

import rootcast.saying.Sayable;
import rootcast.saying.Sentence;

/** Why something is due on a round. */
public enum Why implements Sayable {
    NOTE_HOW_IT_CAME("Warm, wilted or late boxes root worse: note how it came."),
    RIGHT_AFTER_STICKING("Right after sticking, over the leaves. Product and rate: label and local law."),
    ONE_IN_TEN_BY_NOW("One batch in ten would be at {stage} by now.", "stage", STAGE),
    LOOKED_AND_NOT_YET("Looked at {times} times and not yet at {stage}.", "times", COUNT, "stage", STAGE),
    WENT_INTO_PHASE("The batch went into {phase}.", "phase", PHASE),
    RECIPE_NITROGEN(
            "The recipe asks for {least} to {most} ppm nitrogen in {phase}.",
            "least",
            MEASURE,
            "most",
            MEASURE,
            "phase",
            PHASE),
    RECIPE_MOISTURE("Moisture should be {least} to {most} of 5.", "least", MEASURE, "most", MEASURE),
    RECIPE_MOISTURE_DRY_AIR(
            "Moisture should be {least} to {most} of 5; the air has been dry.", "least", MEASURE, "most", MEASURE),
    PREVENTION_DUE_BY(
            "Due by {by}, {days} days after sticking. Product and rate: label and local law.",
            "by",
            DATE,
            "days",
            COUNT),
    LAST_COUNTED("Last counted on {on}.", "on", DATE),
    NOT_COUNTED("Not counted yet."),
    CLASHES(
            "Clashes with the house's other batches on {quantities}; would suit: {houses}.",
            "quantities",
            QUANTITIES,
            "houses",
            TEXTS),
    USUAL_MOVE("Batches of this house usually go on to {house} at {stage}.", "house", TEXT, "stage", STAGE),
    TONE_NOT_STUNT("Tone, do not stunt."),
    MOVING_AIR_DRIES("Do leaves of the fresh cuttings move? Too much moving air dries them down."),
    SALTS_UNMEASURED("Nothing measures the salts of the medium here. Below the recipe they were leached: feed."),
    READ_THE_TRAPS("Look under leaves and read the traps: fungus gnats and shore flies.");

    private final Sentence sentence;

    Why(String english, Object... namesAndKinds) {
        this.sentence = Sentence.of(english, namesAndKinds);
    }

    @Override
    public Sentence sentence() {
        return sentence;
    }
}
