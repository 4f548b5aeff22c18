package rootcast.app.climate;

import java.time.Instant;
import rootcast.climate.Quantity;

/**
 * A reading of a known house.
 *
 * @param sensor code of the sensor; {@link #NO_SENSOR} if it was sent for the house as such
 * @param value  in the quantity's unit, whatever unit it came in, with the sensor's offset
 * @param sent   as it came
 */
public record HouseReading(
        String house, Quantity quantity, String sensor, Instant at, double value, double sent, String sentUnit) {

    public static final String NO_SENSOR = "";

    /** Of the house as such, in the quantity's own unit. */
    public HouseReading(String house, Quantity quantity, Instant at, double value) {
        this(house, quantity, NO_SENSOR, at, value, value, quantity.unit().ucum());
    }

    public HouseQuantity of() {
        return new HouseQuantity(house, quantity);
    }
}
