package rootcast.learning;

import static rootcast.saying.ValueKind.COUNT;
import static rootcast.saying.ValueKind.MEASURE;
import static rootcast.saying.ValueKind.THING;

import rootcast.saying.Sayable;
import rootcast.saying.Sentence;

/**
 * Why cardinal temperatures of a stage are learned or kept. Measures are temperatures of the medium in °C, {@code width} a
 * difference of two; an end of a range that is left out is open.
 */
public enum CardinalsWhy implements Sayable {
    TOO_FEW_BATCHES(
            "{batches} batches were seen through it; at least {needed} are needed", "batches", COUNT, "needed", COUNT),
    TOO_NARROW(
            "medium temperatures of the {batches} batches span only {width} °C",
            "batches",
            COUNT,
            "width",
            MEASURE,
            "quantity",
            THING),
    FOUND(
            "{batches} batches at {coldest} to {warmest} °C: optimum {optimumLeast} to {optimumMost} °C,"
                    + " minimum {minimumLeast} to {minimumMost} °C",
            rangeValues()),
    NEITHER_TOLD(
            "{batches} batches at {coldest} to {warmest} °C: optimum {optimumLeast} to {optimumMost} °C,"
                    + " minimum {minimumLeast} to {minimumMost} °C; neither is told",
            rangeValues());

    private final Sentence sentence;

    CardinalsWhy(String english, Object... namesAndKinds) {
        this.sentence = Sentence.of(english, namesAndKinds);
    }

    private static Object[] rangeValues() {
        return new Object[] {
            "batches", COUNT,
            "coldest", MEASURE,
            "warmest", MEASURE,
            "optimumLeast", MEASURE,
            "optimumMost", MEASURE,
            "minimumLeast", MEASURE,
            "minimumMost", MEASURE,
            "quantity", THING
        };
    }

    @Override
    public Sentence sentence() {
        return sentence;
    }
}
