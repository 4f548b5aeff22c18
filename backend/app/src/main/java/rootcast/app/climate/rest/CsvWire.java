package rootcast.app.climate.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.ArrayList;
import java.util.Arrays;
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
import rootcast.saying.Fault;

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
            throw Problem.malformed("decimal", Fault.ONE_OF, List.of(".", ","));
        }
        char parting = separator == null ? ',' : separator.charAt(0);
        if (parting == decimalMark.charAt(0) || parting == '"' || parting == '\n' || parting == '\r') {
            throw Problem.malformed("separator", Fault.SAME_AS_DECIMAL_SIGN);
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
            throw Problem.malformed("zone", Fault.NOT_A_TIME_ZONE);
        }
    }

    private DateTimeFormatter readFormat() {
        try {
            return timeFormat == null
                    ? DateTimeFormatter.ISO_LOCAL_DATE_TIME
                    : DateTimeFormatter.ofPattern(timeFormat, java.util.Locale.ROOT);
        } catch (IllegalArgumentException broken) {
            throw Problem.malformed("timeFormat", Fault.NOT_A_TIME_FORMAT);
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
            throw Problem.malformed(path, Fault.NEEDS_SENSOR_OR_HOUSE);
        }
        if (!houses.contains(house)) {
            throw Problem.unknownCode(path + ".house", house);
        }
        Quantity quantity = Quantity.ofWireName(quantityName)
                .orElseThrow(() -> Problem.malformed(
                        path + ".quantity",
                        Fault.ONE_OF,
                        Arrays.stream(Quantity.values()).map(Quantity::wireName).toList()));
        ReadingUnit unit = ReadingUnit.ofUcum(unitCode)
                .filter(ReadingUnit.of(quantity)::contains)
                .orElseThrow(() -> Problem.malformed(
                        path + ".unit",
                        Fault.ONE_OF,
                        ReadingUnit.of(quantity).stream().map(ReadingUnit::ucum).toList()));
        return new CsvPlan.Column(
                wire.column(),
                house,
                quantity,
                HouseReading.NO_SENSOR,
                unit,
                shown -> unit.kept(shown, LightSource.SUN));
    }
}
