package rootcast.availability;

import java.time.LocalDate;
import java.util.Optional;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.Outlook;
import rootcast.outlook.UsableTrays;
import rootcast.site.Site;

/** From a batch's outlook to what it offers sales. */
public final class LotOfBatch {

    private LotOfBatch() {}

    /**
     * The lot; empty if it is as likely as not that the batch never gets ready at the temperatures expected. Dates are days
     * at the batch's site: a plant that is through by midnight may leave, and one whose hold days end in the course of a day
     * may leave on it. Nothing leaves before the day of the outlook.
     */
    public static Optional<SupplyLot> of(String batch, Outlook outlook, Site site) {
        if (outlook.readyAt().p50().equals(DateDistribution.NEVER)) {
            return Optional.empty();
        }
        return Optional.of(new SupplyLot(
                batch,
                date -> outlook.ready().probabilityBy(site.startOf(date)),
                new OddsAtSite(outlook.usable(), site, site.dayOf(outlook.asOf()))));
    }

    private record OddsAtSite(UsableTrays usable, Site site, LocalDate today) implements TrayOdds {

        @Override
        public @Nullable Days daysWith(double probability) {
            LocalDate first = today;
            while (usable.isTooEarly(site.startOf(first), probability)) {
                if (usable.isTooLate(site.startOf(first), probability)) {
                    return null;
                }
                first = first.plusDays(1);
            }
            LocalDate after = first;
            while (!usable.isTooLate(site.startOf(after), probability)) {
                after = after.plusDays(1);
            }
            return after.equals(first) ? null : new Days(first, after.minusDays(1));
        }

        @Override
        public int mostWith(double probability) {
            return usable.most(probability);
        }

        @Override
        public IntToDoubleFunction on(LocalDate day) {
            return usable.at(site.startOf(day));
        }
    }
}
