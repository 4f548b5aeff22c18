package rootcast.availability;

/** The range a confidence lies in: over 0, at most 1. At 1 only certain trays count. */
final class Confidence {

    private Confidence() {}

    static double checked(double confidence) {
        if (!(confidence > 0 && confidence <= 1)) {
            throw new IllegalArgumentException("confidence %s must be over 0 and at most 1".formatted(confidence));
        }
        return confidence;
    }
}
