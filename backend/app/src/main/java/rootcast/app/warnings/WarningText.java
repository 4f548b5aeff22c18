package rootcast.app.warnings;

import java.util.Locale;
import rootcast.warnings.Warning;

/** A warning in an English sentence, beside the codes and values that a program is told; for people see {@link Letter}. */
public final class WarningText {

    private WarningText() {}

    public static String of(Warning warning) {
        String about = warning.batch() == null ? "" : ", batch " + warning.batch();
        return "House %s%s: %s".formatted(warning.house(), about, what(warning));
    }

    private static String what(Warning warning) {
        return switch (warning.kind()) {
            case DRY_DOWN -> "the air dries the cuttings down" + numbers(warning);
            case MEDIUM_DRY -> "the medium is too dry" + numbers(warning);
            case OVER_MISTING -> "too wet for long while mist runs" + numbers(warning);
            case MEDIUM_SATURATED -> "the medium is saturated while roots grow" + numbers(warning);
            case MEDIUM_COLD -> "the medium is too cold" + numbers(warning);
            case AIR_COLD -> "the night air is too cold" + numbers(warning);
            case LIGHT_HIGH -> "too much light" + numbers(warning);
            case AIR_WET -> "the air has been wet for a day and a night, which breeds rot" + numbers(warning);
            case NIGHT_MIST_ON -> "callused, and the nights are as wet as under mist" + numbers(warning);
            case MIST_NOT_WEANED -> "callused, and nobody has recorded that mist was weaned.";
            case LEACHED ->
                "rooted, and the salts of the medium lie below the recipe: the cuttings were leached"
                        + numbers(warning);
            case NO_FEED -> "rooted, and nobody has recorded that it was fed.";
            case SCOUTING_MISSED -> "scouting is overdue.";
            case PREVENTION_MISSED -> "prevention in the first week was not recorded.";
            case NO_READINGS ->
                "no readings any more%s."
                        .formatted(
                                warning.measured() == null
                                        ? ""
                                        : " of " + warning.measured().wireName());
        };
    }

    private static String numbers(Warning warning) {
        if (warning.worst() == null || warning.limit() == null) {
            return ".";
        }
        String unit = switch (warning.unit()) {
            case "Cel" -> " °C";
            case "{level}" -> " of 5";
            case "umol/m2/s" -> " µmol/m²/s";
            default -> " " + warning.unit();
        };
        return String.format(Locale.ROOT, ": %.4g%s, limit %.4g.", warning.worst(), unit, warning.limit());
    }
}
