package rootcast.crop;

import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;

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
            throw new FaultyValue("maxC", maxC, Fault.CARDINALS_NOT_RISING, minC, optimumC, maxC);
        }
        if (!(minC < optimumC && optimumC < maxC)) {
            throw new FaultyValue("optimumC", optimumC, Fault.CARDINALS_NOT_RISING, minC, optimumC, maxC);
        }
        if (!(minC < referenceC && referenceC < maxC)) {
            throw new FaultyValue("referenceC", referenceC, Fault.REFERENCE_OUTSIDE, minC, maxC);
        }
    }
}
