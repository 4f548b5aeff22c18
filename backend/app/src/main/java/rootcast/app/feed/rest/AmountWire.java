package rootcast.app.feed.rest;

import jakarta.validation.constraints.NotNull;
import java.util.Arrays;
import java.util.List;
import rootcast.app.problem.Problem;
import rootcast.feed.Measure;
import rootcast.saying.Fault;

/** An amount with its unit: L, mL, [gal_us], [foz_us] for volumes, g, kg, [oz_av], [lb_av] for weights. */
record AmountWire(@NotNull Double value, @NotNull String unit) {

    private static final double MOST = 1e9;

    static AmountWire of(double baseAmount, Measure measure) {
        return new AmountWire(measure.ofBase(baseAmount), measure.ucum());
    }

    /** In litres or grams, whichever is wanted. */
    double base(String field, Measure.Kind wanted) {
        Measure measure = measure(field);
        if (measure.kind() != wanted) {
            throw Problem.notAllowed(field + ".unit", unit, Fault.ONE_OF, units(wanted));
        }
        if (!(value > 0 && value <= MOST)) {
            throw Problem.notAllowed(field + ".value", value, Fault.OVER_AND_AT_MOST, 0, MOST);
        }
        return measure.toBase(value);
    }

    Measure measure(String field) {
        return Measure.ofUcum(unit)
                .orElseThrow(() -> Problem.notAllowed(
                        field + ".unit",
                        unit,
                        Fault.ONE_OF,
                        Arrays.stream(Measure.values()).map(Measure::ucum).toList()));
    }

    private static List<String> units(Measure.Kind kind) {
        return Arrays.stream(Measure.values())
                .filter(measure -> measure.kind() == kind)
                .map(Measure::ucum)
                .toList();
    }
}
