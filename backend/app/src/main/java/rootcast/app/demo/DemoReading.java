package rootcast.app.demo;

import java.time.Instant;

/**
 * What a simulated probe shows.
 *
 * @param quantity {@link #MEDIUM} or {@link #AIR}
 * @param valueC   °C, one decimal
 */
public record DemoReading(String house, String quantity, double valueC, Instant at) {
    public static final String MEDIUM = "medium-temperature";
    public static final String AIR = "air-temperature";
}
