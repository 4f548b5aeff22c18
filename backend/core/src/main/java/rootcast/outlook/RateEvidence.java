package rootcast.outlook;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import rootcast.crop.CropProfile;
import rootcast.crop.Stage;
import rootcast.numerics.LogNormalTail;
import rootcast.numerics.NormalShare;

/**
 * What is recorded of a batch's stages, as the likelihood of its rate multiplier M in each and of the moment at which the
 * stage began.
 *
 * <p>With x = M · reference-days gained since the stage began / days at reference, a living cell has reached the stage's
 * end as {@link CellSpread} says, and at x = 1 as many are there as {@link CalledStages} has it. A look is binomial in that. Who enters a stage as
 * complete says that it had come to where it is called so by then, Φ(ln x / {@value #SEEN_SPREAD}), x being relative to that here; when it had not yet is for the looks before to say. Without one, somebody had come by w days earlier and found
 * it incomplete: (Φ(ln x(t) / s) − Φ(ln x(t − w) / s)) / w, over the rounds w that are usual. Each is mixed with a share {@value
 * #ODD_SHARE} that fits any M, for looks at the wrong bench. What it says that nothing was entered: {@link NotEntered}.
 *
 * <p>Source: interval-censored log-normal times, Lawless 2003, Statistical Models and Methods for Lifetime Data, §2.3 and
 * §5.3; the constants are common practice, no source.
 */
final class RateEvidence {

    /** Standard deviation of ln(development at which a person calls a stage complete). Common practice, no source. */
    static final double SEEN_SPREAD = 0.08;

    /** Share of records that say nothing of their batch's rate. Common practice, no source. */
    static final double ODD_SHARE = 0.001;

    /** Trays differ more than their cells do, so more cells than this tell no more. Common practice, no source. */
    static final int MOST_TELLING_CELLS = 20;

    private static final double DAY_MILLIS = 86_400_000;

    private final BatchHistory history;
    private final StagePath path;
    private final double[] roundsDays;
    private final double[] roundsWeights;

    /** By stage, in order of time, so that sums do not depend on how they came in. */
    private final List<List<BatchHistory.Look>> looks = new ArrayList<>();

    RateEvidence(BatchHistory history, StagePath path, CropProfile profile) {
        this.history = history;
        this.path = path;
        this.roundsDays = new double[UsualRounds.NODES];
        this.roundsWeights = new double[UsualRounds.NODES];
        Arrays.setAll(roundsDays, node -> UsualRounds.days(profile.variation(), node));
        Arrays.setAll(roundsWeights, UsualRounds::density);
        for (int stage = 0; stage < StagePath.STAGES; stage++) {
            Stage reached = StagePath.REACHED[stage];
            looks.add(history.looks().stream()
                    .filter(look -> look.stage() == reached)
                    .toList());
        }
    }

    boolean isEmpty() {
        return history.looks().isEmpty() && history.reachedAt().isEmpty();
    }

    /** Whether anything was seen of how the stage goes on or ends. */
    boolean isOf(int stage) {
        return path.isSeen(stage) || !looksOf(stage).isEmpty();
    }

    private List<BatchHistory.Look> looksOf(int stage) {
        return looks.get(stage);
    }

    /** The same stage begun at a moment; asked for many rates. */
    final class Begun {
        private final int stage;
        private final double[] looks;
        private final double entered;

        /** ln(x at an earlier round / x at the entry), by round; minus infinity before the begin. */
        private final double @Nullable [] rounds;

        private final double bestOfRounds;

        Begun(int stage, long beginMillis) {
            this.stage = stage;
            double days = path.daysAtReference(stage);
            this.looks = looksOf(stage).stream()
                    .mapToDouble(
                            look -> path.between(stage, beginMillis, look.at().toEpochMilli()) / days)
                    .toArray();
            long seenAt = path.seenAt(stage);
            double called = days * path.stages().calledAt(stage);
            this.entered = path.isSeen(stage) ? path.between(stage, beginMillis, seenAt) / called : 0;
            if (path.isSeen(stage) && path.incompleteAt(stage) == 0) {
                rounds = new double[roundsDays.length];
                double best = 0;
                for (int i = 0; i < rounds.length; i++) {
                    long before = seenAt - Math.round(roundsDays[i] * DAY_MILLIS);
                    double then = path.between(stage, beginMillis, before) / called;
                    rounds[i] = then > 0 ? Math.log(then / entered) : Double.NEGATIVE_INFINITY;
                    best += roundsWeights[i] * (2 * NormalShare.below(-rounds[i] / SEEN_SPREAD / 2) - 1);
                }
                bestOfRounds = best;
            } else {
                rounds = null;
                bestOfRounds = 1;
            }
        }

        double logLikelihood(double multiplier) {
            double sum = looks(multiplier);
            if (path.isSeen(stage)) {
                double z = Math.log(multiplier * entered) / SEEN_SPREAD;
                sum += rounds == null ? mixed(NormalShare.below(z), 1) : mixed(between(z, rounds), bestOfRounds);
            }
            return sum;
        }

        private double looks(double multiplier) {
            if (looks.length == 0) {
                return 0;
            }
            double[] logs = new double[CellSpread.WEIGHTS.length];
            int number = 0;
            CellSpread cells = path.stages().cells(stage);
            for (BatchHistory.Look look : looksOf(stage)) {
                double beyond = cells.beyond(multiplier * looks[number++]);
                for (int i = 0; i < logs.length; i++) {
                    double z = cells.quantile(beyond, i);
                    logs[i] += look(z, look.cells(), look.reached(), Math.min(look.cells(), MOST_TELLING_CELLS));
                }
            }
            return mean(logs);
        }
    }

    /**
     * Log likelihood of what is recorded of a stage's end, had it come at a moment with the batch at a rate.
     *
     * <p>Here every cell tells, as many as were looked at, and rounds are as far apart as the crop's usually are: taken to err more than it
     * does, a record would excuse a forecast that erred. Where trays differ or rounds are uneven it errs more, and a forecast is held to be worse
     * than it was, which is the safe side.
     *
     * @param endMillis {@link DevelopmentCurve#NEVER} if it had not come at all
     */
    double logOfEnd(int stage, long endMillis, double multiplier) {
        double perDay = multiplier / path.daysAtReference(stage);
        CellSpread cells = path.stages().cells(stage);
        double[] logs = new double[CellSpread.WEIGHTS.length];
        for (BatchHistory.Look look : looksOf(stage)) {
            double beyond = cells.beyond(progress(stage, endMillis, look.at().toEpochMilli(), perDay));
            for (int i = 0; i < logs.length; i++) {
                logs[i] += look(cells.quantile(beyond, i), look.cells(), look.reached(), look.cells());
            }
        }
        double sum = looksOf(stage).isEmpty() ? 0 : mean(logs);
        if (!path.isSeen(stage)) {
            return sum;
        }
        double by = enteredBy(stage, endMillis, path.seenAt(stage), perDay);
        if (path.incompleteAt(stage) > 0) {
            return sum + mixed(by, 1);
        }
        long before = path.seenAt(stage) - Math.round(roundsDays[UsualRounds.USUAL] * DAY_MILLIS);
        return sum + mixed(by - enteredBy(stage, endMillis, before, perDay), 1);
    }

    private double enteredBy(int stage, long endMillis, long atMillis, double perDay) {
        double progress =
                progress(stage, endMillis, atMillis, perDay) / path.stages().calledAt(stage);
        return progress > 0 ? NormalShare.below(Math.log(progress) / SEEN_SPREAD) : 0;
    }

    /** 1 at the end, 0 or less before the begin. */
    private double progress(int stage, long endMillis, long atMillis, double perDay) {
        if (endMillis == DevelopmentCurve.NEVER) {
            return 0;
        }
        return 1 + perDay * (path.between(stage, endMillis, atMillis) - path.between(stage, atMillis, endMillis));
    }

    private double between(double z, double[] rounds) {
        double sum = 0;
        for (int i = 0; i < rounds.length; i++) {
            sum += roundsWeights[i] * (NormalShare.below(z) - NormalShare.below(z + rounds[i] / SEEN_SPREAD));
        }
        return sum;
    }

    /** A batch's cells differ alike in all looks at a stage, so these are weighed together for each spread. */
    private static double mean(double[] logs) {
        double most = Arrays.stream(logs).max().orElseThrow();
        double sum = 0;
        for (int i = 0; i < logs.length; i++) {
            sum += CellSpread.WEIGHTS[i] * Math.exp(logs[i] - most);
        }
        return most + Math.log(sum);
    }

    /** @param telling as many cells it weighs as */
    private static double look(double z, int cells, int reached, int telling) {
        double share = (double) reached / cells;
        double log = 0;
        if (reached > 0) {
            log += share * (LogNormalTail.below(z) - Math.log(share));
        }
        if (reached < cells) {
            log += (1 - share) * (LogNormalTail.above(z) - Math.log(1 - share));
        }
        return mixed(Math.exp(log * telling), 1);
    }

    /** @param best the likelihood at the M that fits best */
    private static double mixed(double likelihood, double best) {
        return Math.log((1 - ODD_SHARE) * likelihood + ODD_SHARE * best);
    }
}
