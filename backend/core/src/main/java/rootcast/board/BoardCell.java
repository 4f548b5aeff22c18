package rootcast.board;

import java.time.LocalDate;
import rootcast.site.ShipWeek;

/**
 * One week of one row, in trays.
 *
 * @param date     the day the cell stands for: the site's ship day, or today once that is past in the running week
 * @param ready    usable on the date at the confidence, before promises; 0 in a past week
 * @param promised trays still to ship that were promised for any day of the week
 * @param open     can still be promised for the date with every promise kept; 0 in a past week
 * @param likely   open at even odds, or at the confidence if that is lower; never less than {@code open}
 * @param atRisk   trays of {@code promised} that can no longer be kept at the confidence they were made at
 * @param lessSure trays of {@code promised} that were promised at a lower confidence than is asked for: they need not be among
 *                 {@code ready} and are kept all the same
 */
public record BoardCell(
        ShipWeek week, LocalDate date, int ready, int promised, int open, int likely, int atRisk, int lessSure) {}
