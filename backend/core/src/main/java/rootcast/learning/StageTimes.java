package rootcast.learning;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntToDoubleFunction;
import org.jspecify.annotations.Nullable;
import rootcast.crop.Stage;

/**
 * How long the stages of one batch took, in reference-days, as far as it was seen.
 *
 * <p>A stage seen from moment to moment gained G. Its begin had come about some time before that was seen and its end too;
 * the end of one stage is the begin of the next, so a late look lengthens one and shortens the other. When it ended is a
 * matter of what the batch is like: {@link UnseenEnds}. To begin with, before anything is known of the crop, each moment is taken
 * as even over the time since the look before, b and c reference-days: D = G + b·u − c·v, ln D normal with the mean ln(G + b/2 − c/2)
 * and the variances and covariances of u and v, each 1/12, divided by the square.
 *
 * <p>Units: reference-days and their natural logarithm.
 */
final class StageTimes {

    /** Nobody leaves cuttings alone for longer, so somebody came by since an older look. Common practice, no source. */
    static final double MOST_ROUNDS_DAYS = 10;

    /** Spread of ln(development at which people call a stage complete), as in the outlook. Common practice, no source. */
    static final double CALL_SPREAD = 0.08;

    /** Nobody knows a moment better than to so much of the stage, either way. */
    private static final double LEAST_SPREAD = 0.01;

    /** Below this a stage cannot be told from none. */
    private static final double LEAST_DAYS = 1e-3;

    /** Nobody knows a moment better than to a thousandth of the stage; and no division by nothing. */
    private static final double LEAST_VARIANCE = 1e-6;

    private final BatchRecord.@Nullable SeenStage[] seen = new BatchRecord.SeenStage[Matrix3.N];
    private final double[] gained = new double[Matrix3.N];
    private final double[] beginRate = new double[Matrix3.N];
    private final double[] endRate = new double[Matrix3.N];
    private final List<Cells> cells = new ArrayList<>();

    /** A look, with the reference-days from the seen begin of its stage and the rate around that begin. */
    private record Cells(BatchRecord.SeenCells look, double gained, double beginRate) {}

    /**
     * What is known once it is decided how far apart rounds are.
     *
     * @param isSeen   by stage
     * @param log      ln D of a seen stage; 0 of another
     * @param error    covariance of {@code log} around the truth; of an unseen stage 1 by itself
     * @param logSlope Σ ln(dlog/dt) by the moment t at which each end was seen, to compare likelihoods of those moments
     * @param looks    by stage
     * @param ends     when the stages had ended, as far as that is known
     * @param times    that it was made of
     */
    record Given(
            boolean[] isSeen,
            double[] log,
            double[][] error,
            double logSlope,
            List<List<LookedAt>> looks,
            UnseenEnds ends,
            StageTimes times) {

        /** The looks with their stages' begins so long before they were seen, by stage that ended there. */
        List<List<LookedAt>> looks(double[] unseenDays, double[] variance) {
            return times.looks(k -> unseenDays[k - 1], k -> variance[k - 1]);
        }

        boolean tellsNothing() {
            return !isSeen[0] && !isSeen[1] && !isSeen[2] && looks.stream().allMatch(List::isEmpty);
        }

        int seenStages() {
            return (isSeen[0] ? 1 : 0) + (isSeen[1] ? 1 : 0) + (isSeen[2] ? 1 : 0);
        }
    }

    /**
     * @param logGained     ln of the reference-days from the stage's begin
     * @param beginVariance of that, because the begin is not known to the moment
     * @param toEntry       reference-days from the look to the stage's entry, under 0 if that was before; NaN if there was none
     */
    record LookedAt(double logGained, double beginVariance, int cells, int reached, double toEntry) {

        boolean isEntered() {
            return !Double.isNaN(toEntry);
        }
    }

    /** @param rates of the three stages */
    StageTimes(BatchRecord record, WarmDays.Rates[] rates) {
        this(record.stages(), record.looks(), rates);
    }

    /** The same batch without its looks, were the cardinals of one stage others. */
    StageTimes withOther(Stage stage, WarmDays.Rates rates) {
        StageTimes other = new StageTimes(List.of(), List.of(), new WarmDays.Rates[0]);
        for (int k = 0; k < Matrix3.N; k++) {
            BatchRecord.SeenStage each = seen[k];
            if (each != null && each.stage() == stage) {
                other.take(k, each, rates);
            } else if (each != null) {
                other.seen[k] = each;
                other.gained[k] = gained[k];
                other.beginRate[k] = beginRate[k];
                other.endRate[k] = endRate[k];
            }
        }
        return other;
    }

    private StageTimes(List<BatchRecord.SeenStage> stages, List<BatchRecord.SeenCells> looks, WarmDays.Rates[] rates) {
        for (BatchRecord.SeenStage stage : stages) {
            int k = Stage.GROWING.indexOf(stage.stage());
            take(k, stage, rates[k]);
        }
        for (BatchRecord.SeenCells look : looks) {
            int k = Stage.GROWING.indexOf(look.stage());
            cells.add(new Cells(
                    look, look.gained().gained(rates[k]), look.aroundBegin().meanRate(rates[k])));
        }
    }

    private void take(int k, BatchRecord.SeenStage stage, WarmDays.Rates rates) {
        seen[k] = stage;
        gained[k] = stage.gained().gained(rates);
        beginRate[k] = stage.aroundBegin().meanRate(rates);
        endRate[k] = stage.aroundEnd().meanRate(rates);
    }

    Given given(double roundsDays) {
        boolean[] isSeen = new boolean[Matrix3.N];
        double[] log = new double[Matrix3.N];
        double[][] error = Matrix3.of(0, 1);
        double logSlope = 0;
        double[] days = new double[Matrix3.N];
        double[] late = new double[Matrix3.N];
        for (int k = 0; k < Matrix3.N; k++) {
            BatchRecord.SeenStage stage = seen[k];
            if (stage == null) {
                continue;
            }
            double begin = beginRate[k] * unseenDays(roundsDays, stage.beginLookDays());
            late[k] = Math.min(endRate[k] * unseenDays(roundsDays, stage.endLookDays()), gained[k]);
            days[k] = gained[k] + (begin - late[k]) / 2;
            isSeen[k] = days[k] >= LEAST_DAYS && endRate[k] > 0;
            if (!isSeen[k]) {
                continue;
            }
            log[k] = Math.log(days[k]);
            logSlope += Math.log(endRate[k] / days[k]);
            error[k][k] = LEAST_VARIANCE + (begin * begin + late[k] * late[k]) / 12 / (days[k] * days[k]);
            if (k > 0 && isSeen[k - 1]) {
                error[k][k - 1] = -late[k - 1] * begin / 12 / (days[k - 1] * days[k]);
                error[k - 1][k] = error[k][k - 1];
            }
        }
        List<List<LookedAt>> evenly = looks(
                k -> unseenDays(roundsDays, beginLookDays(k)) / 2,
                k -> unseenDays(roundsDays, beginLookDays(k)) * unseenDays(roundsDays, beginLookDays(k)) / 12);
        return new Given(isSeen, log, error, logSlope, evenly, ends(isSeen, roundsDays), this);
    }

    /**
     * Bounded by the look that found the stage incomplete, without one by the rounds. Where people call by the cells they meet it may
     * have been a little from complete when they called it so, and a little beyond when they did not: the look's own cells say more.
     */
    private UnseenEnds ends(boolean[] isSeen, double roundsDays) {
        int stages = 0;
        double[] leastDays = new double[Matrix3.N];
        double[] mostDays = new double[Matrix3.N];
        while (stages < Matrix3.N && isSeen[stages]) {
            BatchRecord.SeenStage stage = seen[stages];
            double lookDays = stage == null ? 0 : stage.endLookDays();
            double spread = lookDays <= MOST_ROUNDS_DAYS ? CALL_SPREAD : LEAST_SPREAD;
            leastDays[stages] = -spread * gained[stages] / endRate[stages];
            mostDays[stages] = unseenDays(roundsDays, lookDays) - leastDays[stages];
            stages++;
        }
        return new UnseenEnds(stages, gained, beginRate, endRate, leastDays, mostDays);
    }

    private boolean hasLook(int k) {
        BatchRecord.SeenStage stage = seen[k];
        return stage != null && stage.endLookDays() <= MOST_ROUNDS_DAYS;
    }

    private double beginLookDays(int k) {
        return cells.stream()
                .filter(each -> Stage.GROWING.indexOf(each.look.stage()) == k)
                .mapToDouble(each -> each.look.beginLookDays())
                .findFirst()
                .orElse(0);
    }

    /**
     * @param begunDays by stage, how long before it was seen it had begun
     * @param variance  of that
     */
    private List<List<LookedAt>> looks(IntToDoubleFunction begunDays, IntToDoubleFunction variance) {
        List<List<LookedAt>> byStage = List.of(new ArrayList<>(), new ArrayList<>(), new ArrayList<>());
        for (Cells each : cells) {
            int k = Stage.GROWING.indexOf(each.look.stage());
            double begun = k == 0 ? 0 : each.beginRate * begunDays.applyAsDouble(k);
            double spread = k == 0 ? 0 : each.beginRate * each.beginRate * variance.applyAsDouble(k);
            double days = each.gained + begun;
            if (days >= LEAST_DAYS) {
                byStage.get(k)
                        .add(new LookedAt(
                                Math.log(days),
                                spread / (days * days),
                                each.look.cells(),
                                each.look.reached(),
                                seen[k] == null ? Double.NaN : gained[k] - each.gained));
            }
        }
        return byStage;
    }

    /** A look of not too long ago says how long; an older one does not, for somebody will have come by since. */
    private static double unseenDays(double roundsDays, double lookDays) {
        return lookDays <= MOST_ROUNDS_DAYS ? lookDays : roundsDays;
    }

    /** Whether it matters how far apart rounds are. */
    boolean needsRounds() {
        for (int k = 0; k < Matrix3.N; k++) {
            if (seen[k] != null && !hasLook(k)) {
                return true;
            }
        }
        return false;
    }
}
