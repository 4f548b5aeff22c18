package rootcast.scenario;

import org.jspecify.annotations.Nullable;

/**
 * One batch met on one day.
 *
 * @param leadDays      the middling date lay so far ahead, to half a day
 * @param cluster       business and house: what these share is no news twice
 * @param predictedDays ahead at 5, 10, 50, 90 and 95 %
 * @param trueDays      ahead in truth; under 0 if it was ready and nobody had seen it
 * @param calendarError of counting days, in days
 * @param pinballDays   mean over 10, 50 and 90 %
 * @param traysThere    whether the trays at p10 were there
 * @param kept          promises on the first, middle and last usable day; null if nothing is offered
 */
record GalleryCase(
        int leadDays,
        String cluster,
        double[] predictedDays,
        double trueDays,
        double calendarError,
        double pinballDays,
        boolean traysThere,
        boolean @Nullable [] kept) {

    double error() {
        return Math.abs(predictedDays[2] - trueDays);
    }

    double width() {
        return predictedDays[3] - predictedDays[1];
    }

    /** Ready before the 10 % date. */
    boolean isEarly() {
        return trueDays < predictedDays[1];
    }

    /** Ready after the 90 % date. */
    boolean isLate() {
        return trueDays > predictedDays[3];
    }

    boolean isInside80() {
        return !isEarly() && !isLate();
    }

    boolean isInside90() {
        return trueDays >= predictedDays[0] && trueDays <= predictedDays[4];
    }
}
