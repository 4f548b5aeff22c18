package rootcast.app.treatments.rest;

import java.time.Instant;
import java.util.UUID;
import rootcast.rounds.Treatment;

/**
 * A house that must not be entered now.
 *
 * @param until     when it may be entered again
 * @param product   what was applied
 * @param treatment the record of it
 */
record ClosedHouseView(String site, String house, Instant until, String product, UUID treatment) {

    static ClosedHouseView of(String site, Treatment closing) {
        return new ClosedHouseView(site, closing.house(), closing.reentryAt(), closing.product(), closing.id());
    }
}
