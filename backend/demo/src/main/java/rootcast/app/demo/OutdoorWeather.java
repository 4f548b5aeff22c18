package rootcast.app.demo;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.Reader;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.Year;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.Arrays;

/**
 * Outdoor air temperature from a public record of one year, hour by hour. The record's year stands for any year and its
 * hours are read as the site's own standard time; straight lines run between the hours.
 *
 * <p>Source: seed/demo/weather/README.md (hourly normals 1981-2010).
 */
final class OutdoorWeather {

    private static final int RECORDED_YEAR = 2010;
    private static final int HOURS = 8_760;

    private final double[] hourlyC;

    private OutdoorWeather(double[] hourlyC) {
        this.hourlyC = hourlyC;
    }

    /**
     * The record's hours.
     *
     * @param csv header line, then local date-time and °C; a missing hour is taken from the line between its neighbours
     */
    static OutdoorWeather read(Reader csv) throws IOException {
        double[] hourlyC = new double[HOURS];
        Arrays.fill(hourlyC, Double.NaN);
        BufferedReader lines = new BufferedReader(csv);
        lines.readLine();
        LocalDateTime newYear = Year.of(RECORDED_YEAR).atDay(1).atStartOfDay();
        for (String line = lines.readLine(); line != null; line = lines.readLine()) {
            String[] fields = line.split(",");
            int hour = Math.toIntExact(ChronoUnit.HOURS.between(newYear, LocalDateTime.parse(fields[0])));
            hourlyC[hour] = Double.parseDouble(fields[1]);
        }
        for (int hour = 0; hour < HOURS; hour++) {
            if (Double.isNaN(hourlyC[hour])) {
                hourlyC[hour] = (hourlyC[(hour + HOURS - 1) % HOURS] + hourlyC[(hour + 1) % HOURS]) / 2;
            }
            if (Double.isNaN(hourlyC[hour])) {
                throw new IOException("no temperature for hour %d of the year, nor for its neighbours".formatted(hour));
            }
        }
        return new OutdoorWeather(hourlyC);
    }

    double airC(Instant at, ZoneId zone) {
        ZoneOffset standard = zone.getRules().getStandardOffset(at);
        LocalDateTime local = LocalDateTime.ofEpochSecond(at.getEpochSecond(), 0, standard);
        int dayOfYear = Math.min(local.getDayOfYear(), 365);
        int hour = (dayOfYear - 1) * 24 + local.getHour();
        double within = (local.getMinute() * 60 + local.getSecond()) / 3600.0;
        return (1 - within) * hourlyC[hour] + within * hourlyC[(hour + 1) % HOURS];
    }
}
