package rootcast.outlook;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rootcast.climate.HourSource;

/**
 * What is expected of one batch, as of an instant.
 *
 * @param callusedAt    when 90 % of the living cells have callused
 * @param rootedAt      when 90 % have rooted
 * @param readyAt       when 90 % may leave
 * @param ready         the whole distribution behind {@code readyAt}
 * @param saleableTrays trays once ready
 * @param expectedAlive mean number of plants on the bench now, unrecorded losses taken off
 * @param missingHours  hours since sticking, until ready, for which its house had no reading
 * @param filledFrom    what stood in for them; empty if none was missing
 * @param forecastFrom  what the hours to come are taken from
 * @param usable        how many trays can leave at a moment, of which sales may promise
 * @param shared        what its date has in common with those of other batches
 * @param moves         where it is expected to be carried that nobody has recorded yet: a house's usual next one
 * @param byRecord      what the crop's own record has made of {@code readyAt}; null if nothing
 */
public record Outlook(
        Instant asOf,
        DateRange callusedAt,
        DateRange rootedAt,
        DateRange readyAt,
        DateDistribution ready,
        SaleableTrays saleableTrays,
        double expectedAlive,
        int missingHours,
        Set<HourSource> filledFrom,
        HourSource forecastFrom,
        UsableTrays usable,
        SharedDoubt shared,
        List<BatchHistory.Placement> moves,
        @Nullable ByRecord byRecord) {

    /**
     * @param byModel when 90 % may leave, by the model alone
     * @param width   so many times as wide as that the range was made
     * @param batches that this rests on, each for itself
     */
    public record ByRecord(DateRange byModel, double width, double batches) {}
}
