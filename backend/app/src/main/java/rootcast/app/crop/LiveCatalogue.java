package rootcast.app.crop;

import jakarta.enterprise.context.ApplicationScoped;
import java.util.Collection;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import rootcast.crop.Crop;
import rootcast.crop.Variety;

/** Varieties and their crops as they are now. Changed only by {@code flow}; read by anyone. */
@ApplicationScoped
public class LiveCatalogue {

    private volatile Map<String, Variety> varieties = Map.of();
    private volatile Map<String, Crop> crops = Map.of();

    public void varieties(Collection<Variety> nowVarieties, Collection<Crop> nowCrops) {
        crops = nowCrops.stream().collect(Collectors.toUnmodifiableMap(Crop::code, Function.identity()));
        varieties = nowVarieties.stream().collect(Collectors.toUnmodifiableMap(Variety::code, Function.identity()));
    }

    public Variety variety(String code) {
        return varieties.get(code);
    }

    public Crop cropOf(String variety) {
        return crops.get(varieties.get(variety).crop());
    }

    public Collection<Variety> varieties() {
        return varieties.values();
    }
}
