package rootcast.app.feed.rest;

import jakarta.validation.constraints.NotNull;
import java.util.Arrays;
import java.util.stream.Collectors;
import rootcast.app.problem.Problem;
import rootcast.feed.Measure;

/** An amount with its unit: L, mL, [gal_us], [foz_us] for volumes, g, kg, [oz_av], [lb_av] for weights. */
record AmountWire(@NotNull Double value, @NotNull String unit) {

    static AmountWire of(double baseAmount, Measure measure) {
        return new AmountWire(measure.ofBase(baseAmount), measure.ucum());
    }

    /** In litres or grams, whichever is wanted. */
    double base(String field, Measure.Kind wanted) {
        Measure measure = measure(field);
        if (measure.kind() != wanted) {
            throw Problem.notAllowed(field + ".unit", unit, "must be one of " + units(wanted));
        }
        if (!(value > 0 && value <= 1e9)) {
            throw Problem.notAllowed(field + ".value", value, "must be over 0 and at most 1000000000");
        }
        return measure.toBase(value);
    }

    Measure measure(String field) {
        return Measure.ofUcum(unit)
                .orElseThrow(() -> Problem.notAllowed(
                        field + ".unit",
                        unit,
                        "must be one of " + units(Measure.Kind.VOLUME) + ", " + units(Measure.Kind.WEIGHT)));
    }

    private static String units(Measure.Kind kind) {
        return Arrays.stream(Measure.values())
                .filter(measure -> measure.kind() == kind)
                .map(Measure::ucum)
                .collect(Collectors.joining(", "));
    }
}
