package rootcast.app.demo;

import java.util.ArrayList;
import java.util.List;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.RecordReadings;
import rootcast.climate.LightSource;
import rootcast.climate.Quantity;
import rootcast.climate.Sensor;
import rootcast.site.House;

/** The simulated sensors as the application knows sensors: one for each quantity of a house, with a topic. */
final class DemoSensors {

    static final List<String> MEASURED =
            List.of(DemoReading.MEDIUM, DemoReading.AIR, DemoReading.HUMIDITY, DemoReading.LIGHT);

    private DemoSensors() {}

    static Sensor sensor(House house, String measured) {
        Quantity quantity = Quantity.ofWireName(measured).orElseThrow();
        return new Sensor(
                codeOf(house.code(), quantity),
                house.code(),
                quantity,
                quantity.unit(),
                topicOf(house.code(), measured),
                0,
                LightSource.SUN,
                null);
    }

    static String topicOf(String house, String quantity) {
        return "demo/" + house + "/" + quantity;
    }

    static List<RecordReadings.Numbered> numbered(List<DemoReading> readings) {
        List<RecordReadings.Numbered> numbered = new ArrayList<>(readings.size());
        for (DemoReading reading : readings) {
            Quantity quantity = Quantity.ofWireName(reading.quantity()).orElseThrow();
            numbered.add(new RecordReadings.Numbered(
                    numbered.size(),
                    new HouseReading(
                            reading.house(),
                            quantity,
                            codeOf(reading.house(), quantity),
                            reading.at(),
                            reading.value(),
                            reading.value(),
                            quantity.unit().ucum())));
        }
        return numbered;
    }

    private static String codeOf(String house, Quantity quantity) {
        return house
                + switch (quantity) {
                    case MEDIUM_TEMPERATURE -> "-medium";
                    case AIR_TEMPERATURE -> "-air";
                    case RELATIVE_HUMIDITY -> "-rh";
                    case LIGHT -> "-light";
                    case MEDIUM_MOISTURE -> "-moisture";
                    case EC -> "-ec";
                };
    }
}
