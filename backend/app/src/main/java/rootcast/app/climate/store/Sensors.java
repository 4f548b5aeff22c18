package rootcast.app.climate.store;

import io.quarkus.hibernate.orm.panache.PanacheRepositoryBase;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Arrays;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import rootcast.climate.LightSource;
import rootcast.climate.MoistureScale;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingUnit;
import rootcast.climate.Sensor;
import rootcast.facts.FactPosition;

/** The sensor map as stored. */
@ApplicationScoped
@Transactional
public class Sensors {

    @Inject
    Rows rows;

    @ApplicationScoped
    static class Rows implements PanacheRepositoryBase<SensorRow, String> {}

    public List<Sensor> all() {
        return rows.list("order by code").stream().map(Sensors::sensor).toList();
    }

    public Optional<Sensor> sensor(String code) {
        return rows.findByIdOptional(code).map(Sensors::sensor);
    }

    public Optional<Sensor> ofTopic(String topic) {
        return rows.find("topic", topic).firstResultOptional().map(Sensors::sensor);
    }

    public void save(Sensor sensor, FactPosition position) {
        SensorRow row = new SensorRow();
        row.code = sensor.code();
        row.house = sensor.house();
        row.quantity = sensor.quantity().wireName();
        row.unit = sensor.unit().ucum();
        row.topic = sensor.topic();
        row.offsetValue = sensor.offset();
        row.lightSource = sensor.light().wireName();
        row.moistureScale = sensor.scale() == null ? null : written(sensor.scale());
        row.positionNo = position.value();
        rows.getEntityManager().merge(row);
    }

    private static Sensor sensor(SensorRow row) {
        return new Sensor(
                row.code,
                row.house,
                Quantity.ofWireName(row.quantity).orElseThrow(),
                ReadingUnit.ofUcum(row.unit).orElseThrow(),
                row.topic,
                row.offsetValue,
                LightSource.ofWireName(row.lightSource).orElseThrow(),
                row.moistureScale == null ? null : scale(row.moistureScale));
    }

    private static String written(MoistureScale scale) {
        return scale.shown().stream().map(String::valueOf).collect(Collectors.joining(" "));
    }

    private static MoistureScale scale(String written) {
        return new MoistureScale(
                Arrays.stream(written.split(" ")).map(Double::valueOf).toList());
    }
}
