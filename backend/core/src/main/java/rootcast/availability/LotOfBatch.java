package rootcast.availability;

import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import java.util.function.IntPredicate;
import java.util.function.IntToDoubleFunction;
import java.util.function.Predicate;
import org.jspecify.annotations.Nullable;
import rootcast.numerics.FirstTrue;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.Outlook;
import rootcast.outlook.UsableIn;
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
                new OddsAtSite(outlook.usable(), site, site.dayOf(outlook.asOf())),
                crop -> {
                    UsableIn inWorlds = outlook.usable().in(batch, crop, outlook.shared());
                    return (world, days) -> inWorlds.trays(
                            world, days.stream().map(site::startOf).toArray(Instant[]::new));
                }));
    }

    private record OddsAtSite(UsableTrays usable, Site site, LocalDate today) implements TrayOdds {

        @Override
        public @Nullable Days daysWith(double probability) {
            LocalDate tooLate = firstDay(day -> usable.isTooLate(day, probability));
            LocalDate first =
                    firstDay(day -> !usable.isTooEarly(day, probability) || usable.isTooLate(day, probability));
            return first.isBefore(tooLate) ? new Days(first, tooLate.minusDays(1)) : null;
        }

        /** @param condition false up to some moment, true from there on */
        private LocalDate firstDay(Predicate<Instant> condition) {
            IntPredicate ahead = days -> condition.test(site.startOf(today.plusDays(days)));
            int reached = 1;
            while (!ahead.test(reached - 1)) {
                reached *= 2;
            }
            return today.plusDays(FirstTrue.in(reached / 2, reached - 1, ahead));
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
