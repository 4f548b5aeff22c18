package rootcast.app.warnings;

import java.math.BigDecimal;
import java.math.MathContext;
import java.time.Instant;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;
import java.util.ResourceBundle;
import org.jspecify.annotations.Nullable;
import rootcast.warnings.Warning;

/**
 * A warning as a letter says it: in one language, one system of units, and the site's own time.
 *
 * <p>A conversion to foot-candles is that of sunlight, as on the screens: 54 lx are 1 µmol/m²/s and 10.764 lx are 1 fc,
 * good for two figures.
 */
final class Letter {

    /** Which words a letter is written in. */
    enum Language {
        EN(Locale.ENGLISH),
        ES(Locale.forLanguageTag("es"));

        private final Locale locale;

        Language(Locale locale) {
            this.locale = locale;
        }
    }

    private static final double FOOT_CANDLES_PER_UMOL = 54 / 10.764;
    private static final MathContext TWO_FIGURES = new MathContext(2);

    private final Locale locale;
    private final ResourceBundle words;
    private final boolean fahrenheit;
    private final ZoneId zone;

    /** @param fahrenheit whether temperatures are said in °F and light in foot-candles */
    Letter(Language language, boolean fahrenheit, ZoneId zone) {
        this.locale = language.locale;
        this.words = ResourceBundle.getBundle(
                "rootcast.app.warnings.letter",
                locale,
                ResourceBundle.Control.getNoFallbackControl(ResourceBundle.Control.FORMAT_PROPERTIES));
        this.fahrenheit = fahrenheit;
        this.zone = zone;
    }

    String subject(Warning warning, String house) {
        return said("subject", what(warning), house);
    }

    String text(WrittenWarning written, String house) {
        Warning warning = written.warning();
        String batch = warning.batch() == null ? "" : said("batch", warning.batch());
        return said("about", house, what(warning), batch + numbers(warning)) + "\n\n"
                + said("since", time(warning.since()), zone.getId()) + "\n"
                + said("number", written.id()) + "\n";
    }

    private String what(Warning warning) {
        String kind = words.getString(warning.kind().wireName());
        return warning.measured() == null
                ? kind
                : kind + " (" + words.getString(warning.measured().wireName()) + ")";
    }

    private String numbers(Warning warning) {
        if (warning.worst() == null || warning.limit() == null) {
            return "";
        }
        return said("numbers", value(warning.worst(), warning.unit()), value(warning.limit(), warning.unit()));
    }

    private String value(double value, @Nullable String unit) {
        return switch (unit == null ? "" : unit) {
            case "Cel" -> fahrenheit ? number(value * 1.8 + 32, 1) + " °F" : number(value, 1) + " °C";
            case "umol/m2/s" ->
                fahrenheit
                        ? number(new BigDecimal(value * FOOT_CANDLES_PER_UMOL, TWO_FIGURES).doubleValue(), 0) + " fc"
                        : number(value, 0) + " µmol/m²/s";
            case "{level}" -> number(value, value == Math.rint(value) ? 0 : 1) + " " + words.getString("level");
            case "%" -> number(value, 0) + " %";
            case "" -> number(value, 2);
            default -> number(value, 2) + " " + unit;
        };
    }

    /** Mexican crews and English ones both write a point. */
    private static String number(double value, int digits) {
        return String.format(Locale.ROOT, "%." + digits + "f", value);
    }

    private String time(Instant instant) {
        return DateTimeFormatter.ofPattern("d MMM uuuu, HH:mm", locale).format(instant.atZone(zone));
    }

    private String said(String key, Object... values) {
        return words.getString(key).formatted(values);
    }
}
