package rootcast.app.board.rest;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rootcast.app.board.BoardView;
import rootcast.app.problem.Problem;
import rootcast.site.ShipWeek;

/** Reads the part of an address that says which weeks and how sure. */
public final class BoardQuery {

    private static final int USUAL_WEEKS = 8;
    private static final double USUAL_CONFIDENCE = 0.9;
    private static final double LEAST_CONFIDENCE = 0.01;
    private static final double MOST_CONFIDENCE = 0.999;

    private BoardQuery() {}

    public static BoardView view(
            @Nullable String from,
            @Nullable String weeks,
            @Nullable String confidence,
            Supplier<ShipWeek> currentWeek) {
        ShipWeek first = from == null ? currentWeek.get() : week("from", from);
        return new BoardView(first, weeks(weeks), confidence(confidence));
    }

    static ShipWeek week(String field, String text) {
        try {
            return ShipWeek.parse(text);
        } catch (IllegalArgumentException notAWeek) {
            throw Problem.malformed(field, notAWeek.getMessage());
        }
    }

    static int weeks(@Nullable String text) {
        if (text == null) {
            return USUAL_WEEKS;
        }
        try {
            int weeks = Integer.parseInt(text);
            if (weeks >= 1 && weeks <= BoardView.MOST_WEEKS) {
                return weeks;
            }
        } catch (NumberFormatException notANumber) {
            // said below
        }
        throw Problem.malformed(
                "weeks", "is '" + text + "'; it must be a whole number from 1 to " + BoardView.MOST_WEEKS);
    }

    static double confidence(@Nullable String text) {
        if (text == null) {
            return USUAL_CONFIDENCE;
        }
        try {
            return confidence("confidence", Double.parseDouble(text));
        } catch (NumberFormatException notANumber) {
            throw Problem.malformed("confidence", "is '" + text + "'; it must be a number such as 0.9");
        }
    }

    static double confidence(String field, double asked) {
        if (asked >= LEAST_CONFIDENCE && asked <= MOST_CONFIDENCE) {
            return asked;
        }
        throw Problem.malformed(
                field, "is " + asked + "; it must lie between " + LEAST_CONFIDENCE + " and " + MOST_CONFIDENCE);
    }
}
