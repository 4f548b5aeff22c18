package rootcast.app.climate.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HouseReading;
import rootcast.app.climate.csv.CsvPlan;
import rootcast.app.problem.Problem;
import rootcast.climate.LightSource;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingUnit;
import rootcast.climate.Sensor;

/**
 * A table and how it is to be read.
 *
 * @param separator  comma unless given
 * @param decimal    "." or ","; a point unless given
 * @param timeFormat pattern of a local time; without one ISO 8601
 * @param zone       of local times; without one every time carries its offset
 */
record CsvWire(
        @NotNull String csv,
        @Nullable @Size(min = 1, max = 1) String separator,
        @Nullable @Size(min = 1, max = 1) String decimal,
        @NotNull String timeColumn,
        @Nullable @Size(max = 60) String timeFormat,
        @Nullable @Size(max = 64) String zone,
        @NotEmpty List<@NotNull @Valid ColumnWire> columns) {

    /** Either a sensor, or a house with quantity and unit. */
    record ColumnWire(
            @NotNull String column,
            @Nullable String sensor,
            @Nullable String house,
            @Nullable String quantity,
            @Nullable String unit) {}

    CsvPlan plan(Set<String> houses, Map<String, Sensor> sensors) {
        String decimalMark = decimal == null ? "." : decimal;
        if (!decimalMark.equals(".") && !decimalMark.equals(",")) {
            throw Problem.malformed("decimal", "is '" + decimal + "'; it must be . or ,");
        }
        char parting = separator == null ? ',' : separator.charAt(0);
        if (parting == decimalMark.charAt(0) || parting == '"' || parting == '\n' || parting == '\r') {
            throw Problem.malformed(
                    "separator", "must be another character than the decimal sign, quotes and line ends");
        }
        List<CsvPlan.Column> plans = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            plans.add(column(columns.get(i), "columns[" + i + "]", houses, sensors));
        }
        return new CsvPlan(parting, decimalMark.charAt(0), timeColumn, readZone(), readFormat(), plans);
    }

    private @Nullable ZoneId readZone() {
        try {
            return zone == null ? null : ZoneId.of(zone);
        } catch (DateTimeException unknown) {
            throw Problem.malformed("zone", "is '" + zone + "'; write it as America/New_York");
        }
    }

    private DateTimeFormatter readFormat() {
        try {
            return timeFormat == null
                    ? DateTimeFormatter.ISO_LOCAL_DATE_TIME
                    : DateTimeFormatter.ofPattern(timeFormat, java.util.Locale.ROOT);
        } catch (IllegalArgumentException broken) {
            throw Problem.malformed("timeFormat", "is '" + timeFormat + "'; write it as yyyy-MM-dd HH:mm");
        }
    }

    private static CsvPlan.Column column(
            ColumnWire wire, String path, Set<String> houses, Map<String, Sensor> sensors) {
        if (wire.sensor() != null) {
            Sensor sensor = sensors.get(wire.sensor());
            if (sensor == null) {
                throw Problem.unknownCode(path + ".sensor", wire.sensor());
            }
            return new CsvPlan.Column(
                    wire.column(), sensor.house(), sensor.quantity(), sensor.code(), sensor.unit(), sensor::kept);
        }
        String house = wire.house();
        String quantityName = wire.quantity();
        String unitCode = wire.unit();
        if (house == null || quantityName == null || unitCode == null) {
            throw Problem.malformed(path, "needs a sensor, or house, quantity and unit");
        }
        if (!houses.contains(house)) {
            throw Problem.unknownCode(path + ".house", house);
        }
        Quantity quantity = Quantity.ofWireName(quantityName)
                .orElseThrow(() -> Problem.malformed(path + ".quantity", "is '" + quantityName + "'"));
        ReadingUnit unit = ReadingUnit.ofUcum(unitCode)
                .filter(ReadingUnit.of(quantity)::contains)
                .orElseThrow(() -> Problem.malformed(
                        path + ".unit",
                        "is '" + unitCode + "'; " + quantityName + " comes in "
                                + ReadingUnit.of(quantity).stream()
                                        .map(ReadingUnit::ucum)
                                        .toList()));
        return new CsvPlan.Column(
                wire.column(),
                house,
                quantity,
                HouseReading.NO_SENSOR,
                unit,
                shown -> unit.kept(shown, LightSource.SUN));
    }
}
