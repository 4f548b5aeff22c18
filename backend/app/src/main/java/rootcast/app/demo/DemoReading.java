package rootcast.app.demo;

import java.time.Instant;
import rootcast.climate.Quantity;

/**
 * What a simulated probe shows.
 *
 * @param valueC   °C, one decimal
 */
public record DemoReading(String house, Quantity quantity, double valueC, Instant at) {}
