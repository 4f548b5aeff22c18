package rootcast.app.flow;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import rootcast.app.climate.LiveClimate;
import rootcast.app.crop.LiveCatalogue;
import rootcast.app.crop.SourcedCrop;
import rootcast.app.crop.store.Catalogue;
import rootcast.app.outlook.LiveBatches;
import rootcast.app.site.LiveSites;
import rootcast.app.site.store.Places;
import rootcast.crop.Crop;
import rootcast.crop.CropProfile;
import rootcast.crop.Variety;

/** Brings sites, houses, crops and varieties into what is live. */
@ApplicationScoped
class LiveSetup {

    @Inject
    Places places;

    @Inject
    Catalogue catalogue;

    @Inject
    LiveSites sites;

    @Inject
    LiveCatalogue names;

    @Inject
    LiveClimate climate;

    @Inject
    LiveBatches batches;

    void load() {
        sites.sites(places.sites());
        Set<String> replanned = climate.houses(places.houses(), places.setpoints());
        List<Variety> varieties = catalogue.varieties();
        List<Crop> crops = catalogue.crops().stream().map(SourcedCrop::crop).toList();
        names.varieties(varieties, crops);
        Map<String, CropProfile> profiles = crops.stream().collect(Collectors.toMap(Crop::code, Crop::profile));
        batches.setup(
                varieties.stream().collect(Collectors.toMap(Variety::code, variety -> profiles.get(variety.crop()))),
                replanned);
    }
}
