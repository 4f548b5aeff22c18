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

    /** Five numbers with spaces between; null for a sensor without one. */
    public String moistureScale;

    public long positionNo;
}
