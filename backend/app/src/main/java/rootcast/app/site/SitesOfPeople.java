package rootcast.app.site;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import rootcast.app.people.KnownSites;
import rootcast.app.site.store.Places;

/** Tells people's grants which sites there are. */
@ApplicationScoped
class SitesOfPeople implements KnownSites {

    @Inject
    Places places;

    @Override
    public boolean isKnown(String code) {
        return places.site(code).isPresent();
    }
}
