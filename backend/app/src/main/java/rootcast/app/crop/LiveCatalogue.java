package rootcast.app.crop;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Collection;
import rootcast.app.snapshot.Snapshots;
import rootcast.crop.Crop;
import rootcast.crop.Variety;

/** Varieties and their crops as they are in the snapshot of now. */
@ApplicationScoped
public class LiveCatalogue {

    @Inject
    Snapshots snapshots;

    public Variety variety(String code) {
        return now().varieties().get(code);
    }

    public Crop cropOf(String variety) {
        return now().cropOf(variety);
    }

    public Collection<Variety> varieties() {
        return now().varieties().values();
    }

    private CatalogueSnapshot now() {
        return snapshots.now().part(CatalogueSnapshot.class);
    }
}
