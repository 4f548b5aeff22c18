package rootcast.trackrecord;

import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import rootcast.outlook.DateRange;

/**
 * One batch forecast from one moment.
 *
 * @param origin         {@code leadDays} before it was ready
 * @param predicted      dates as they would have been shown at the origin
 * @param errorDays      ready after the middling date; over 0 is later than predicted
 * @param readyAt        the moment that is taken, see {@link FinishedBatch#readyAt()}
 * @param inside50       1 if it was ready within the middle half of what was predicted, 0 if not, the share of the
 *                       probability inside if it is not known to the moment; likewise 80 % and 90 %
 * @param pinballDays    mean of the pinball losses of the 10 %, 50 % and 90 % dates
 * @param crpsDays       continuous ranked probability score
 * @param calendarDays   the error that counting days would have made
 * @param degreeDaysDays the error that plain degree-days would have made, in days
 * @param promised       what could have been promised; null if nothing
 */
public record Case(
        String batch,
        String crop,
        int leadDays,
        Instant origin,
        Instant readyAt,
        Instant seenReadyAt,
        DateRange predicted,
        double errorDays,
        double inside50,
        double inside80,
        double inside90,
        double pinballDays,
        double crpsDays,
        double calendarDays,
        double degreeDaysDays,
        @Nullable Promised promised,
        Circumstances circumstances) {

    /**
     * What may bear on how good the forecast could be.
     *
     * @param readyOn       local day of the moment that is taken
     * @param lookedAt      whether cells were looked at in the days before it was entered ready
     * @param carriedUnsaid whether it was carried to another house after the origin that nobody had named as the next
     */
    public record Circumstances(String site, LocalDate readyOn, boolean lookedAt, boolean carriedUnsaid) {}

    /**
     * @param shipOn first ship day on which the batch offered a tray
     * @param kept   whether so many trays could be filled then with plants that were there, through and not past their day
     */
    public record Promised(LocalDate shipOn, int trays, boolean kept) {}

    /** Its promise once the batch is ready. */
    Case scored(boolean kept) {
        return new Case(
                batch,
                crop,
                leadDays,
                origin,
                readyAt,
                seenReadyAt,
                predicted,
                errorDays,
                inside50,
                inside80,
                inside90,
                pinballDays,
                crpsDays,
                calendarDays,
                degreeDaysDays,
                promised == null ? null : new Promised(promised.shipOn(), promised.trays(), kept),
                circumstances);
    }
}
