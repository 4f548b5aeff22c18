package rootcast.learning;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import rootcast.crop.Stage;

/** The figures of an {@link Evidence} as sentences for whoever has to decide on it. */
final class EvidenceInWords {

    private static final double SAME = 0.005;

    private EvidenceInWords() {}

    static Evidence added(Evidence evidence) {
        return new Evidence(
                evidence.asOf(),
                evidence.finishedBatches(),
                evidence.runningBatches(),
                evidence.stages(),
                evidence.rateSpreadBefore(),
                evidence.rateSpreadLearned(),
                evidence.cellSpreadBefore(),
                evidence.cellSpreadLearned(),
                evidence.roundsDays(),
                evidence.cardinals(),
                evidence.varieties(),
                evidence.sites(),
                sentences(evidence));
    }

    private static List<String> sentences(Evidence evidence) {
        List<String> text = new ArrayList<>();
        text.add(
                "%d finished and %d running batches.".formatted(evidence.finishedBatches(), evidence.runningBatches()));
        evidence.stages().forEach(stage -> text.add(days(stage)));
        text.add(text(
                "Batches differ by %.1f %% in rate (the profile said %.1f %%).",
                100 * evidence.rateSpreadLearned(), 100 * evidence.rateSpreadBefore()));
        text.add(text(
                "Where no look tells, a stage is taken to have been complete for up to %s days when it was seen.",
                evidence.roundsDays()));
        evidence.cardinals().forEach(cardinals -> text.add(cardinals(cardinals)));
        return text;
    }

    private static String days(Evidence.OfStage stage) {
        double change = stage.daysLearned() / stage.daysBefore() - 1;
        String against = Math.abs(change) < SAME
                ? "as before"
                : text("%.0f %% %s than before", 100 * Math.abs(change), change > 0 ? "longer" : "shorter");
        return text(
                "%s: %.1f days at reference (80 %%: %.1f to %.1f), %s; seen through in %d batches.",
                name(stage.stage()),
                stage.daysLearned(),
                stage.daysLow(),
                stage.daysHigh(),
                against,
                stage.observations());
    }

    private static String cardinals(Evidence.OfCardinals cardinals) {
        return "%s: cardinal temperatures %s: %s."
                .formatted(
                        name(cardinals.stage()),
                        cardinals.identified() ? "told" : "kept as they were",
                        cardinals.reason());
    }

    private static String name(Stage stage) {
        return switch (stage) {
            case STICK -> "Sticking to callus";
            case CALLUS -> "Callus to roots";
            default -> "Roots to ready";
        };
    }

    private static String text(String format, Object... values) {
        return String.format(Locale.ROOT, format, values);
    }
}
