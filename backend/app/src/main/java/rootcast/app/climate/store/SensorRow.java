package rootcast.app.climate.store;

import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;

@Entity
@Table(name = "sensor")
public class SensorRow {

    @Id
    public String code;

    public String house;
    public String quantity;
    public String unit;
    public String topic;
    public double offsetValue;
    public String lightSource;
    public long positionNo;
}
