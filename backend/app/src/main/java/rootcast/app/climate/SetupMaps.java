package rootcast.app.climate;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import rootcast.app.climate.store.Sensors;
import rootcast.app.once.FactHead;
import rootcast.app.site.store.Places;
import rootcast.climate.Sensor;
import rootcast.facts.FactPosition;
import rootcast.site.House;

/** Houses and sensors by what readings name them by; read again only once the set-up has changed. */
@ApplicationScoped
public class SetupMaps {

    @Inject
    Places places;

    @Inject
    Sensors sensors;

    @Inject
    FactHead head;

    private volatile Maps last = new Maps(FactPosition.START, Set.of(), Map.of(), Map.of());

    /** @param at position of the last change of the set-up that they know */
    public record Maps(FactPosition at, Set<String> houses, Map<String, Sensor> byCode, Map<String, Sensor> byTopic) {}

    /** Inside of {@link rootcast.app.once.Once}, where the set-up cannot change before the readings are stored. */
    public Maps now() {
        FactPosition setup = head.last().setup();
        Maps maps = last;
        if (!setup.equals(maps.at())) {
            maps = new Maps(
                    setup,
                    places.houses().stream().map(House::code).collect(Collectors.toSet()),
                    sensors.all().stream().collect(Collectors.toMap(Sensor::code, Function.identity())),
                    sensors.all().stream()
                            .filter(sensor -> sensor.topic() != null)
                            .collect(Collectors.toMap(Sensor::topic, Function.identity())));
            last = maps;
        }
        return maps;
    }
}
