package rootcast.app.climate.csv;

import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.climate.LightSource;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingRemark;
import rootcast.climate.ReadingUnit;
import rootcast.climate.Sensor;
import rootcast.saying.Saying;
import rootcast.site.House;

/**
 * The houses and sensors that a table may name, and by which clock each is read.
 *
 * @param zones of the sites, by code
 * @param zone  stands for all of them if it is given
 */
public record CsvNames(
        List<House> houses,
        Map<String, ZoneId> zones,
        List<Sensor> sensors,
        @Nullable ZoneId zone) {

    public Optional<House> house(String code) {
        return houses.stream().filter(house -> house.code().equals(code)).findFirst();
    }

    public Optional<Sensor> sensor(String code) {
        return sensors.stream().filter(sensor -> sensor.code().equals(code)).findFirst();
    }

    public CsvPlan.Series of(Sensor sensor) {
        House house = house(sensor.house()).orElseThrow();
        return new CsvPlan.Series(
                house.code(),
                house.site(),
                zoneOf(house),
                sensor.quantity(),
                sensor.code(),
                sensor.unit(),
                sensor::kept);
    }

    public CsvPlan.Series of(House house, Quantity quantity, ReadingUnit unit) {
        return new CsvPlan.Series(
                house.code(),
                house.site(),
                zoneOf(house),
                quantity,
                HouseReading.NO_SENSOR,
                unit,
                shown -> unit.kept(shown, LightSource.SUN));
    }

    private ZoneId zoneOf(House house) {
        return zone == null ? zones.get(house.site()) : zone;
    }

    /** By code, else by a name that only one house has; in any case of letters. */
    public House houseNamed(String name) throws CsvPlan.Nobody {
        Optional<House> byCode = houses.stream()
                .filter(house -> house.code().equalsIgnoreCase(name))
                .findFirst();
        if (byCode.isPresent()) {
            return byCode.get();
        }
        List<House> byName = houses.stream()
                .filter(house -> house.name().equalsIgnoreCase(name))
                .toList();
        if (byName.size() != 1) {
            throw new CsvPlan.Nobody(
                    Saying.of(byName.isEmpty() ? ReadingRemark.UNKNOWN_HOUSE : ReadingRemark.SEVERAL_HOUSES, name));
        }
        return byName.get(0);
    }

    /** By code, else by topic; in any case of letters. */
    public Sensor sensorNamed(String name) throws CsvPlan.Nobody {
        return sensors.stream()
                .filter(sensor -> sensor.code().equalsIgnoreCase(name))
                .findFirst()
                .or(() -> sensors.stream()
                        .filter(sensor -> name.equalsIgnoreCase(sensor.topic()))
                        .findFirst())
                .orElseThrow(() -> new CsvPlan.Nobody(Saying.of(ReadingRemark.UNKNOWN_SENSOR, name)));
    }
}
