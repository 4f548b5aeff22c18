package rootcast.app.demo;

import java.time.Instant;

/**
 * What a simulated probe shows.
 *
 * @param quantity {@link #MEDIUM}, {@link #AIR}, {@link #HUMIDITY} or {@link #LIGHT}
 * @param value    °C or percent with one decimal, or whole µmol/m²/s
 */
public record DemoReading(String house, String quantity, double value, Instant at) {
    public static final String MEDIUM = "medium-temperature";
    public static final String AIR = "air-temperature";
    public static final String HUMIDITY = "relative-humidity";
    public static final String LIGHT = "light";
}
