package rootcast.app.climate.rest;

import jakarta.validation.Valid;
import jakarta.validation.constraints.NotEmpty;
import jakarta.validation.constraints.NotNull;
import jakarta.validation.constraints.Size;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.csv.CsvNames;
import rootcast.app.climate.csv.CsvPlan;
import rootcast.app.problem.Problem;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingUnit;
import rootcast.climate.Sensor;
import rootcast.climate.TimeForm;
import rootcast.saying.Fault;
import rootcast.site.House;

/**
 * A table and how it is to be read.
 *
 * @param separator    comma unless given
 * @param decimal      "." or ","; a point unless given
 * @param clockColumn  with the time of day, where the time column holds the day alone
 * @param timeFormat   pattern of a time, of day and time of day with a blank between them if there is a clock column;
 *                     without one ISO 8601
 * @param zone         of local times at every site; stated offsets are held against it, too
 * @param clockOfSite  whether local times are those of each house's own site; without it and a zone every time states its
 *                     offset
 * @param houseColumn  whose cells say of each line which house it is of, by code or name
 * @param sensorColumn whose cells say of each line which sensor it is of, by code or topic
 */
record CsvWire(
        @NotNull String csv,
        @Nullable @Size(min = 1, max = 1) String separator,
        @Nullable @Size(min = 1, max = 1) String decimal,
        @NotNull String timeColumn,
        @Nullable String clockColumn,
        @Nullable @Size(max = 60) String timeFormat,
        @Nullable @Size(max = 64) String zone,
        @Nullable Boolean clockOfSite,
        @Nullable String houseColumn,
        @Nullable String sensorColumn,
        @NotEmpty List<@NotNull @Valid ColumnWire> columns) {

    /**
     * Either a sensor, or a house with quantity and unit. Where a column of the table names the house, quantity and unit;
     * where it names the sensor, nothing else.
     */
    record ColumnWire(
            @NotNull String column,
            @Nullable String sensor,
            @Nullable String house,
            @Nullable String quantity,
            @Nullable String unit) {}

    CsvPlan plan(List<House> houses, Map<String, ZoneId> zones, List<Sensor> sensors) {
        String decimalMark = decimal == null ? "." : decimal;
        if (!decimalMark.equals(".") && !decimalMark.equals(",")) {
            throw Problem.malformed("decimal", Fault.ONE_OF, List.of(".", ","));
        }
        char parting = separator == null ? ',' : separator.charAt(0);
        if (parting == decimalMark.charAt(0) || parting == '"' || parting == '\n' || parting == '\r') {
            throw Problem.malformed("separator", Fault.SAME_AS_DECIMAL_SIGN);
        }
        if (houseColumn != null && sensorColumn != null) {
            throw Problem.malformed("sensorColumn", Fault.NOT_WANTED);
        }
        boolean ofSite = Boolean.TRUE.equals(clockOfSite);
        if (ofSite && zone != null) {
            throw Problem.malformed("clockOfSite", Fault.NOT_WANTED);
        }
        CsvNames names = new CsvNames(houses, zones, sensors, readZone());
        List<CsvPlan.Column> plans = new ArrayList<>();
        for (int i = 0; i < columns.size(); i++) {
            ColumnWire each = columns.get(i);
            plans.add(new CsvPlan.Column(each.column(), owner(each, "columns[" + i + "]", names)));
        }
        CsvPlan.Times times = new CsvPlan.Times(
                timeColumn, clockColumn, timeFormat == null ? "T" : " ", readFormat(), ofSite || zone != null);
        return new CsvPlan(
                parting, decimalMark.charAt(0), times, houseColumn == null ? sensorColumn : houseColumn, plans);
    }

    private @Nullable ZoneId readZone() {
        try {
            return zone == null ? null : ZoneId.of(zone);
        } catch (DateTimeException unknown) {
            throw Problem.malformed("zone", Fault.NOT_A_TIME_ZONE);
        }
    }

    private TimeForm readFormat() {
        try {
            return timeFormat == null ? TimeForm.iso() : TimeForm.of(timeFormat);
        } catch (IllegalArgumentException broken) {
            throw Problem.malformed("timeFormat", Fault.NOT_A_TIME_FORMAT);
        }
    }

    private CsvPlan.Owner owner(ColumnWire wire, String path, CsvNames names) {
        if (sensorColumn != null) {
            refuseOwnName(wire, path);
            return name -> names.of(names.sensorNamed(name));
        }
        if (houseColumn != null) {
            refuseOwnName(wire, path);
            Quantity quantity = quantity(wire, path);
            ReadingUnit unit = unit(wire, path, quantity);
            return name -> names.of(names.houseNamed(name), quantity, unit);
        }
        String sensorCode = wire.sensor();
        if (sensorCode != null) {
            CsvPlan.Series series = names.of(
                    names.sensor(sensorCode).orElseThrow(() -> Problem.unknownCode(path + ".sensor", sensorCode)));
            return any -> series;
        }
        String houseCode = wire.house();
        if (houseCode == null) {
            throw Problem.malformed(path, Fault.NEEDS_SENSOR_OR_HOUSE);
        }
        House house = names.house(houseCode).orElseThrow(() -> Problem.unknownCode(path + ".house", houseCode));
        Quantity quantity = quantity(wire, path);
        CsvPlan.Series series = names.of(house, quantity, unit(wire, path, quantity));
        return any -> series;
    }

    /** A column cannot be of one house while its lines name others. */
    private static void refuseOwnName(ColumnWire wire, String path) {
        if (wire.sensor() != null) {
            throw Problem.malformed(path + ".sensor", Fault.NOT_WANTED);
        }
        if (wire.house() != null) {
            throw Problem.malformed(path + ".house", Fault.NOT_WANTED);
        }
    }

    private static Quantity quantity(ColumnWire wire, String path) {
        String name = wire.quantity();
        if (name == null) {
            throw Problem.malformed(path, Fault.NEEDS_SENSOR_OR_HOUSE);
        }
        return Quantity.ofWireName(name)
                .orElseThrow(() -> Problem.malformed(
                        path + ".quantity",
                        Fault.ONE_OF,
                        Arrays.stream(Quantity.values()).map(Quantity::wireName).toList()));
    }

    private static ReadingUnit unit(ColumnWire wire, String path, Quantity quantity) {
        String code = wire.unit();
        if (code == null) {
            throw Problem.malformed(path, Fault.NEEDS_SENSOR_OR_HOUSE);
        }
        return ReadingUnit.ofUcum(code)
                .filter(ReadingUnit.of(quantity)::contains)
                .orElseThrow(() -> Problem.malformed(
                        path + ".unit",
                        Fault.ONE_OF,
                        ReadingUnit.of(quantity).stream().map(ReadingUnit::ucum).toList()));
    }
}
