package rootcast.app.climate;

import java.time.Instant;
import rootcast.climate.Quantity;

/**
 * A plausible reading of a known house.
 *
 * @param celsius in °C, whatever unit it came in
 */
public record HouseReading(String house, Quantity quantity, Instant at, double celsius) {}
