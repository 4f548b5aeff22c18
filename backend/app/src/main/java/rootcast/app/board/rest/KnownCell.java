package rootcast.app.board.rest;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import rootcast.app.crop.LiveCatalogue;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.people.Caller;
import rootcast.app.problem.Problem;
import rootcast.app.problem.Thing;
import rootcast.app.site.LiveSites;
import rootcast.availability.Cell;

/** Reads a cell out of an address: all of it must exist, and stand where the asker may look. */
@ApplicationScoped
class KnownCell {

    @Inject
    LiveSites sites;

    @Inject
    LiveCatalogue names;

    @Inject
    Catalogue catalogue;

    @Inject
    Caller caller;

    Cell cell(String variety, String trayFormat, String site) {
        if (names.variety(variety) == null) {
            throw Problem.notFound(Thing.VARIETY, variety);
        }
        if (sites.site(site) == null || !caller.mayRead().includes(site)) {
            throw Problem.notFound(Thing.SITE, site);
        }
        if (catalogue.trayFormat(trayFormat).isEmpty()) {
            throw Problem.notFound(Thing.TRAY_FORMAT, trayFormat);
        }
        return new Cell(variety, trayFormat, site);
    }
}
