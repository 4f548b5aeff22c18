package rootcast.app.demo;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Stage;
import rootcast.ledger.Cause;

/** What befell a batch of the demo, beyond the ordinary. */
enum Story {
    PLAIN(null, 0, Cause.OTHER, 1),
    BOTRYTIS(Stage.STICK, 0.14, Cause.BOTRYTIS, 1),
    ROT(Stage.STICK, 0.10, Cause.ROT, 1),
    DRY_DOWN(Stage.STICK, 0.08, Cause.DRY_DOWN, 1),
    NO_ROOT(Stage.CALLUS, 0.16, Cause.NO_ROOT, 1),
    PEST(Stage.ROOT, 0.07, Cause.PEST, 1),
    DAMAGE(Stage.ROOT, 0.05, Cause.DAMAGE, 1),
    SLOW(null, 0, Cause.OTHER, 0.8),
    FAST(null, 0, Cause.OTHER, 1.2),
    /** A loss entered ten times too large, reversed and entered anew. */
    TYPING_ERROR(null, 0, Cause.OTHER, 1),
    /** A loss written on paper and entered after a later count. */
    LATE_PAPER(null, 0, Cause.OTHER, 1);

    private final @Nullable Stage stage;
    private final double extraLossShare;
    private final Cause cause;
    private final double rateFactor;

    Story(@Nullable Stage stage, double extraLossShare, Cause cause, double rateFactor) {
        this.stage = stage;
        this.extraLossShare = extraLossShare;
        this.cause = cause;
        this.rateFactor = rateFactor;
    }

    static Story parse(String written) {
        return valueOf(written.toUpperCase(Locale.ROOT).replace('-', '_'));
    }

    boolean strikes(Stage in) {
        return stage == in;
    }

    /** Share of the plants alive that die in {@code in} on top of the ordinary. */
    double extraLossShare(Stage in) {
        return strikes(in) ? extraLossShare : 0;
    }

    Cause cause() {
        return cause;
    }

    /** How much faster than its crop the batch develops; 1 is as usual. */
    double rateFactor() {
        return rateFactor;
    }
}
