package rootcast.climate;

import java.util.Locale;
import rootcast.saying.Saying;

/** Says in words what a flag's numbers are. */
public final class FlagWords {

    private FlagWords() {}

    public static String reason(Quantity quantity, QualityFlag flag) {
        String unit = unit(quantity);
        String value = number(flag.value()) + unit;
        String expected = number(flag.expected()) + unit;
        String limit = number(flag.limit()) + unit;
        String used = flag.leftOut() ? "left out" : "named, but used";
        return switch (flag.kind()) {
            case RANGE -> "%s cannot be: the limit is %s; kept, left out".formatted(value, expected);
            case SPIKE ->
                "%s is more than %s from %s, the middle of the readings around it; %s"
                        .formatted(value, limit, expected, used);
            case STEP ->
                "%s after %s is a change of more than %s from one reading to the next; %s"
                        .formatted(value, expected, limit, used);
            case FLAT_LINE ->
                "%s and nothing else for %d hours; %s"
                        .formatted(
                                value,
                                ReadingQuality.FLAT_HOURS,
                                flag.leftOut()
                                        ? "left out, since another sensor moved"
                                        : "no other sensor moved: used");
            case DISAGREEMENT ->
                "the hour's %s is more than %s from %s by the other sensors; %s"
                        .formatted(
                                value,
                                limit,
                                expected,
                                flag.leftOut() ? "left out" : "nobody can say which is right: all are used");
            case DUPLICATE -> "%s came after %s for the same moment; the first stays".formatted(value, expected);
            case CLOCK_SKEW -> "%s was stamped with a time that was still to come; kept, left out".formatted(value);
            case LATE -> "came more than six hours after it was measured; used";
        };
    }

    /** The same as a code and its numbers, which a screen says in its reader's words. */
    public static Saying remark(Quantity quantity, QualityFlag flag) {
        String of = quantity.wireName();
        return switch (flag.kind()) {
            case RANGE -> Saying.of(ReadingRemark.RANGE, flag.value(), flag.expected(), of);
            case SPIKE -> Saying.of(ReadingRemark.SPIKE, flag.value(), flag.expected(), flag.limit(), of);
            case STEP -> Saying.of(ReadingRemark.STEP, flag.value(), flag.expected(), flag.limit(), of);
            case FLAT_LINE -> Saying.of(ReadingRemark.FLAT_LINE, flag.value(), ReadingQuality.FLAT_HOURS, of);
            case DISAGREEMENT -> Saying.of(ReadingRemark.DISAGREEMENT, flag.value(), flag.expected(), flag.limit(), of);
            case DUPLICATE -> Saying.of(ReadingRemark.DUPLICATE, flag.value(), flag.expected(), of);
            case CLOCK_SKEW -> Saying.of(ReadingRemark.CLOCK_SKEW, flag.value(), of);
            case LATE -> Saying.of(ReadingRemark.LATE);
        };
    }

    private static String unit(Quantity quantity) {
        return switch (quantity) {
            case MEDIUM_TEMPERATURE, AIR_TEMPERATURE -> " °C";
            case RELATIVE_HUMIDITY -> " %";
            case LIGHT -> " µmol/m²/s";
            case MEDIUM_MOISTURE -> "";
            case EC -> " mS/cm";
        };
    }

    private static String number(double value) {
        return String.format(Locale.ROOT, "%.2f", value).replaceAll("\\.?0+$", "");
    }
}
