package rootcast.app.board.rest;

import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import rootcast.app.board.BoardView;
import rootcast.app.problem.Problem;
import rootcast.availability.Confidence;
import rootcast.saying.Fault;
import rootcast.site.ShipWeek;

/** Reads the part of an address that says which weeks and how sure. */
public final class BoardQuery {

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
            throw Problem.malformed(field, Fault.NOT_A_WEEK);
        }
    }

    static int weeks(@Nullable String text) {
        if (text == null) {
            return BoardView.USUAL_WEEKS;
        }
        try {
            int weeks = Integer.parseInt(text);
            if (weeks >= 1 && weeks <= BoardView.MOST_WEEKS) {
                return weeks;
            }
        } catch (NumberFormatException notANumber) {
            // said below
        }
        throw Problem.malformed("weeks", Fault.NOT_A_WHOLE_NUMBER, 1, BoardView.MOST_WEEKS);
    }

    static double confidence(@Nullable String text) {
        if (text == null) {
            return Confidence.USUAL;
        }
        try {
            return confidence("confidence", Double.parseDouble(text));
        } catch (NumberFormatException notANumber) {
            throw Problem.malformed("confidence", Fault.NOT_A_NUMBER);
        }
    }

    static double confidence(String field, double asked) {
        if (asked >= LEAST_CONFIDENCE && asked <= MOST_CONFIDENCE) {
            return asked;
        }
        throw Problem.malformed(field, Fault.BETWEEN, LEAST_CONFIDENCE, MOST_CONFIDENCE);
    }
}
