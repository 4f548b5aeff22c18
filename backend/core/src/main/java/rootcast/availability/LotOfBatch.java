package rootcast.availability;

import java.util.Optional;
import rootcast.outlook.DateDistribution;
import rootcast.outlook.Outlook;
import rootcast.outlook.SaleableTrays;
import rootcast.site.Site;

/** From a batch's outlook to what it offers sales. */
public final class LotOfBatch {

    private LotOfBatch() {}

    /**
     * The lot; empty if the batch never gets ready at the temperatures expected. Dates are days at the batch's site; a
     * tray ready by midnight may leave.
     */
    public static Optional<SupplyLot> of(String batch, Outlook outlook, Site site) {
        if (outlook.usableUntil().equals(DateDistribution.NEVER)) {
            return Optional.empty();
        }
        return Optional.of(new SupplyLot(
                batch,
                date -> outlook.ready().probabilityBy(site.startOf(date)),
                tail(outlook.saleableTrays()),
                site.dayOf(outlook.usableUntil())));
    }

    private static double[] tail(SaleableTrays trays) {
        double[] tail = new double[trays.most() + 1];
        for (int n = 0; n < tail.length; n++) {
            tail[n] = trays.atLeast(n);
        }
        return tail;
    }
}
