package rootcast.availability;

/** The range a confidence lies in: over 0, at most 1. At 1 only certain trays count. */
public final class Confidence {

    /** What trays are promised and shown at unless somebody asks otherwise. */
    public static final double USUAL = 0.9;

    /** As likely as not: what is shown as likely beside the usual. */
    public static final double EVEN_ODDS = 0.5;

    private Confidence() {}

    static double checked(double confidence) {
        if (!(confidence > 0 && confidence <= 1)) {
            throw new IllegalArgumentException("confidence %s must be over 0 and at most 1".formatted(confidence));
        }
        return confidence;
    }
}
