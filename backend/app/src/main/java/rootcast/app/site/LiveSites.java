package rootcast.app.site;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Collection;
import rootcast.app.snapshot.Snapshots;
import rootcast.site.Site;

/** Sites as they are in the snapshot of now. */
@ApplicationScoped
public class LiveSites {

    @Inject
    Snapshots snapshots;

    /** A site that is known to exist. */
    public Site site(String code) {
        return now().site(code);
    }

    public Collection<Site> sites() {
        return now().byCode().values();
    }

    private SitesSnapshot now() {
        return snapshots.now().part(SitesSnapshot.class);
    }
}
