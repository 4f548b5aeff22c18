package rootcast.app.crop;

import java.util.Collection;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import rootcast.crop.Crop;
import rootcast.crop.CropProfile;
import rootcast.crop.Variety;

/** Varieties and their crops with the profiles in force, by code. */
public record CatalogueSnapshot(Map<String, Variety> varieties, Map<String, Crop> crops) {

    public static CatalogueSnapshot of(Collection<Variety> varieties, Collection<Crop> crops) {
        return new CatalogueSnapshot(
                varieties.stream().collect(Collectors.toUnmodifiableMap(Variety::code, Function.identity())),
                crops.stream().collect(Collectors.toUnmodifiableMap(Crop::code, Function.identity())));
    }

    public Crop cropOf(String variety) {
        return crops.get(varieties.get(variety).crop());
    }

    /** The profile in force for a variety at a site. */
    public CropProfile profile(String variety, String site) {
        return cropOf(variety).profile().forBatch(variety, site);
    }
}
