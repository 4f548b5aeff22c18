package rootcast.crop;

/**
 * The three cardinal temperatures of a stage's rate of development, and the temperature its days are stated for.
 *
 * @param form       shape of the response between them
 * @param minC       at and below it nothing develops, °C
 * @param optimumC   fastest, °C
 * @param maxC       at and above it nothing develops, °C
 * @param referenceC temperature at which the profile's days hold, °C; strictly between min and max
 */
public record Cardinals(Form form, double minC, double optimumC, double maxC, double referenceC) {

    public enum Form {
        /** Three-cardinal beta function. */
        BETA,
        /** Degree hours: straight from min to optimum, level to max, nothing from there. */
        LINEAR
    }

    public Cardinals {
        if (!(minC < maxC)) {
            throw new FigureOutOfRange(
                    "maximum %s °C must be over minimum %s °C".formatted(maxC, minC), "maxC", maxC, minC, null);
        }
        between("optimum", "optimumC", optimumC, minC, maxC);
        between("reference", "referenceC", referenceC, minC, maxC);
    }

    private static void between(String word, String field, double celsius, double minC, double maxC) {
        if (!(minC < celsius && celsius < maxC)) {
            throw new FigureOutOfRange(
                    "%s %s °C must lie between minimum %s °C and maximum %s °C".formatted(word, celsius, minC, maxC),
                    field,
                    celsius,
                    minC,
                    maxC);
        }
    }
}
