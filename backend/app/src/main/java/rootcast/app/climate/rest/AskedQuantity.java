package rootcast.app.climate.rest;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.app.climate.HourlyClimate;
import rootcast.app.climate.HouseFlags;
import rootcast.app.problem.Problem;
import rootcast.climate.DailyLight;
import rootcast.climate.FlagKind;
import rootcast.climate.Quantity;
import rootcast.climate.ReadingRemark;
import rootcast.saying.Fault;
import rootcast.saying.Saying;

/** A quantity that is measured, or one that follows from such. */
record AskedQuantity(String wireName, String unit, Derived derived, List<Quantity> sources) {

    enum Derived {
        NOTHING,
        DEFICIT,
        DEW_POINT,
        DAILY_LIGHT
    }

    private static final List<AskedQuantity> DERIVED = List.of(
            new AskedQuantity(
                    "vapour-pressure-deficit",
                    "kPa",
                    Derived.DEFICIT,
                    List.of(Quantity.AIR_TEMPERATURE, Quantity.RELATIVE_HUMIDITY)),
            new AskedQuantity(
                    "dew-point",
                    "Cel",
                    Derived.DEW_POINT,
                    List.of(Quantity.AIR_TEMPERATURE, Quantity.RELATIVE_HUMIDITY)),
            new AskedQuantity("daily-light-integral", "mol/m2/d", Derived.DAILY_LIGHT, List.of(Quantity.LIGHT)));

    static AskedQuantity of(@Nullable String wireName) {
        String name = wireName == null ? Quantity.MEDIUM_TEMPERATURE.wireName() : wireName;
        return Quantity.ofWireName(name)
                .map(quantity -> new AskedQuantity(name, quantity.unit().ucum(), Derived.NOTHING, List.of(quantity)))
                .or(() -> DERIVED.stream()
                        .filter(each -> each.wireName.equals(name))
                        .findFirst())
                .orElseThrow(() -> Problem.malformed("quantity", Fault.ONE_OF, names()));
    }

    private static List<String> names() {
        List<String> names = new ArrayList<>(
                Arrays.stream(Quantity.values()).map(Quantity::wireName).toList());
        DERIVED.forEach(each -> names.add(each.wireName));
        return names;
    }

    /** Days with more light than falls outdoors. */
    static List<HouseFlags.Line> moreThanTheSun(List<HourlyClimate.Hour> days) {
        return days.stream()
                .filter(day -> day.value() > DailyLight.MOST_MOLES)
                .map(day -> new HouseFlags.Line(
                        null,
                        day.at(),
                        day.at().plus(Duration.ofDays(1)),
                        FlagKind.RANGE.wireName(),
                        Saying.of(
                                ReadingRemark.MORE_THAN_THE_SUN,
                                day.value(),
                                DailyLight.MOST_MOLES,
                                "daily-light-integral"),
                        null,
                        "daily-light-integral",
                        day.value(),
                        false,
                        false,
                        null,
                        1))
                .toList();
    }
}
