package rootcast.outlook;

import static rootcast.outlook.DevelopmentCurve.NEVER;

import java.util.Arrays;

/**
 * What is believed of a batch's rate c, its stages' own rates and the moments at which they began, stage after stage.
 *
 * <p>In stage k the batch runs at u = c + e (in units of the crop's rate spread). A stage that began at b and runs at u ends
 * at E(b, u), where the next begins. Forward, F(b, c) is the weight of everything seen before a stage that begins at b; the next one's is
 * Σ F(b, c) N(u − c) L(b, u) over all b and u that end there. Backward, B(b, c) is that of everything seen from the stage on. c and u lie
 * on a grid of {@value #NODES} nodes over ±4.27, begins on up to {@value #BEGINS} moments over all that can be, an end between two of
 * them counted at both by its distance.
 *
 * <p>Source: Rabiner 1989, Proc. IEEE 77:257-286 (forward and backward along a chain); Gelman, Carlin, Stern, Dunson, Vehtari and
 * Rubin 2013, Bayesian Data Analysis, 3rd ed., §10.1 (grid).
 */
final class StageChain {

    static final double RANGE_SD = 4.27;
    static final int NODES = 81;
    static final double STEP_SD = 2 * RANGE_SD / (NODES - 1);

    private static final int BEGINS = 11;

    /** Ends less likely than this, beside the likeliest, do not widen the moments looked at. */
    private static final double LEAST_WEIGHT = 1e-4;

    private static final double OWN_REACH_SD = 4.5;

    private final double[] multipliers = new double[NODES];
    private final double[] batchPrior = new double[NODES];
    private final double[] own;
    private final double ownShare;
    private final RateEvidence evidence;
    private final StagePath path;
    private final int last;

    private final long[][] begins = new long[StagePath.STAGES + 1][];
    private final double[][][] forward = new double[StagePath.STAGES + 1][][];
    private final double[][][] likelihood = new double[StagePath.STAGES][][];
    private final double[][][] backward = new double[StagePath.STAGES + 1][][];

    /** By stage, begin and rate: where the end lies among the next stage's begins, whole and part. */
    private final double[][][] endsAt = new double[StagePath.STAGES][][];

    /** By stage, begin and rate: the weight of all that was seen. */
    private final double[][][] weight = new double[StagePath.STAGES][][];

    /**
     * @param ownShare of the variance that is a stage's own
     * @param last     stage up to which anything was seen or begun
     */
    StageChain(double rateSpread, double ownShare, RateEvidence evidence, StagePath path, int last) {
        this.evidence = evidence;
        this.path = path;
        this.last = last;
        this.ownShare = ownShare;
        Arrays.setAll(multipliers, i -> Math.exp(rateSpread * u(i)));
        Arrays.setAll(batchPrior, i -> Math.exp(-u(i) * u(i) / 2 / (1 - ownShare)));
        own = new double[(int) Math.ceil(OWN_REACH_SD * Math.sqrt(ownShare) / STEP_SD)];
        Arrays.setAll(own, distance -> Math.exp(-distance * STEP_SD * distance * STEP_SD / 2 / ownShare));
        begins[0] = new long[] {path.stuckAt()};
        forward[0] = new double[][] {batchPrior};
        for (int stage = 0; stage <= last; stage++) {
            likelihood[stage] = likelihood(stage);
            if (stage < last) {
                goOn(stage);
            }
        }
        backward[last + 1] = null;
        for (int stage = last; stage >= 0; stage--) {
            lookBack(stage);
        }
    }

    private static double u(int node) {
        return node * STEP_SD - RANGE_SD;
    }

    private double[][] likelihood(int stage) {
        double[][] likely = new double[begins[stage].length][NODES];
        if (!evidence.isOf(stage)) {
            for (double[] each : likely) {
                Arrays.fill(each, 1);
            }
            return likely;
        }
        double most = Double.NEGATIVE_INFINITY;
        for (int b = 0; b < likely.length; b++) {
            RateEvidence.Begun begun = evidence.new Begun(stage, begins[stage][b]);
            for (int i = 0; i < NODES; i++) {
                likely[b][i] = begun.logLikelihood(multipliers[i]);
                most = Math.max(most, likely[b][i]);
            }
        }
        for (double[] each : likely) {
            for (int i = 0; i < NODES; i++) {
                each[i] = Math.exp(each[i] - most);
            }
        }
        return likely;
    }

    private void goOn(int stage) {
        long[] from = begins[stage];
        long[][] ends = new long[from.length][NODES];
        double[][] joint = new double[from.length][];
        double most = 0;
        for (int b = 0; b < from.length; b++) {
            joint[b] = blurred(forward[stage][b]);
            for (int i = 0; i < NODES; i++) {
                joint[b][i] *= likelihood[stage][b][i];
                most = Math.max(most, joint[b][i]);
                ends[b][i] = from[b] == NEVER ? NEVER : path.end(stage, from[b], multipliers[i]);
            }
        }
        begins[stage + 1] = moments(ends, joint, most * LEAST_WEIGHT);
        endsAt[stage] = new double[from.length][NODES];
        forward[stage + 1] = new double[begins[stage + 1].length][NODES];
        for (int b = 0; b < from.length; b++) {
            for (int i = 0; i < NODES; i++) {
                endsAt[stage][b][i] = place(ends[b][i], begins[stage + 1]);
                pass(stage, b, i);
            }
        }
        scale(forward[stage + 1]);
    }

    /** Evenly over all ends that are not all but impossible. */
    private static long[] moments(long[][] ends, double[][] joint, double least) {
        long first = NEVER;
        long latest = Long.MIN_VALUE;
        for (int b = 0; b < ends.length; b++) {
            for (int i = 0; i < NODES; i++) {
                if (joint[b][i] >= least && ends[b][i] != NEVER) {
                    first = Math.min(first, ends[b][i]);
                    latest = Math.max(latest, ends[b][i]);
                }
            }
        }
        if (first >= latest) {
            return new long[] {first};
        }
        long[] moments = new long[BEGINS];
        for (int i = 0; i < BEGINS; i++) {
            moments[i] = first + (latest - first) * i / (BEGINS - 1);
        }
        return moments;
    }

    private static double place(long end, long[] moments) {
        if (moments.length == 1 || end <= moments[0]) {
            return 0;
        }
        int to = moments.length - 1;
        return end >= moments[to] ? to : (double) (end - moments[0]) / (moments[to] - moments[0]) * to;
    }

    private void pass(int stage, int b, int i) {
        double likely = likelihood[stage][b][i];
        double at = endsAt[stage][b][i];
        double[][] next = forward[stage + 1];
        int low = (int) at;
        int high = Math.min(low + 1, next.length - 1);
        double part = at - low;
        double[] before = forward[stage][b];
        for (int c = Math.max(0, i - own.length + 1); c < Math.min(NODES, i + own.length); c++) {
            double mass = likely * own[Math.abs(i - c)] * before[c];
            next[low][c] += (1 - part) * mass;
            next[high][c] += part * mass;
        }
    }

    private static void scale(double[][] weights) {
        double most = 0;
        for (double[] each : weights) {
            for (double one : each) {
                most = Math.max(most, one);
            }
        }
        for (double[] each : weights) {
            for (int i = 0; i < each.length; i++) {
                each[i] /= most;
            }
        }
    }

    private void lookBack(int stage) {
        int count = begins[stage].length;
        backward[stage] = new double[count][NODES];
        weight[stage] = new double[count][NODES];
        double[][] later = backward[stage + 1];
        for (int b = 0; b < count; b++) {
            double[] before = forward[stage][b];
            double[] back = backward[stage][b];
            for (int i = 0; i < NODES; i++) {
                double likely = likelihood[stage][b][i];
                double at = later == null ? 0 : endsAt[stage][b][i];
                double sum = 0;
                for (int c = Math.max(0, i - own.length + 1); c < Math.min(NODES, i + own.length); c++) {
                    double mass = likely * own[Math.abs(i - c)];
                    if (later != null) {
                        mass *= between(later, at, c);
                    }
                    back[c] += mass;
                    sum += mass * before[c];
                }
                weight[stage][b][i] = sum;
            }
        }
        scale(backward[stage]);
    }

    private double[] blurred(double[] sharp) {
        double[] blurred = new double[NODES];
        for (int i = 0; i < NODES; i++) {
            for (int c = Math.max(0, i - own.length + 1); c < Math.min(NODES, i + own.length); c++) {
                blurred[i] += own[Math.abs(i - c)] * sharp[c];
            }
        }
        return blurred;
    }

    /** Of ln M / rate spread in a stage. */
    GridDistribution rate(int stage) {
        double[] density = new double[NODES];
        if (stage <= last) {
            for (double[] each : weight[stage]) {
                for (int i = 0; i < NODES; i++) {
                    density[i] += each[i];
                }
            }
        } else {
            double[] batch = new double[NODES];
            for (int b = 0; b < begins[last].length; b++) {
                for (int c = 0; c < NODES; c++) {
                    batch[c] += forward[last][b][c] * backward[last][b][c];
                }
            }
            density = blurred(batch);
        }
        return new GridDistribution(density, -RANGE_SD, STEP_SD);
    }

    /** Correlation of ln M in a stage, one that was begun, with the batch's own c; 0 if either is certain. */
    double correlationWithBatch(int stage) {
        double sum = 0;
        double[] moments = new double[5];
        double[][] later = backward[stage + 1];
        for (int b = 0; b < begins[stage].length; b++) {
            for (int i = 0; i < NODES; i++) {
                double at = later == null ? 0 : endsAt[stage][b][i];
                for (int c = Math.max(0, i - own.length + 1); c < Math.min(NODES, i + own.length); c++) {
                    double mass = likelihood[stage][b][i] * own[Math.abs(i - c)] * forward[stage][b][c];
                    mass *= later == null ? 1 : between(later, at, c);
                    sum += mass;
                    add(moments, mass, u(i), u(c));
                }
            }
        }
        double mean = moments[0] / sum;
        double meanBatch = moments[1] / sum;
        double variances = (moments[2] / sum - mean * mean) * (moments[3] / sum - meanBatch * meanBatch);
        return variances > 0 ? (moments[4] / sum - mean * meanBatch) / Math.sqrt(variances) : 0;
    }

    private static void add(double[] moments, double mass, double u, double c) {
        moments[0] += mass * u;
        moments[1] += mass * c;
        moments[2] += mass * u * u;
        moments[3] += mass * c * c;
        moments[4] += mass * u * c;
    }

    private static double between(double[][] later, double at, int c) {
        int low = (int) at;
        double part = at - low;
        return (1 - part) * later[low][c] + part * later[Math.min(low + 1, later.length - 1)][c];
    }

    /** Correlation of ln M in two stages that have not begun: what of their variance is the batch's. */
    double correlationAhead() {
        double sum = 0;
        double mean = 0;
        double square = 0;
        for (int b = 0; b < begins[last].length; b++) {
            for (int c = 0; c < NODES; c++) {
                double mass = forward[last][b][c] * backward[last][b][c];
                sum += mass;
                mean += mass * u(c);
                square += mass * u(c) * u(c);
            }
        }
        double variance = square / sum - mean / sum * (mean / sum);
        return variance / (variance + ownShare);
    }

    /** Moments at which a stage may have begun, rising. */
    long[] begins(int stage) {
        return begins[stage];
    }

    /** By begin and rate. */
    double[][] weights(int stage) {
        return weight[stage];
    }

    double multiplier(int node) {
        return multipliers[node];
    }

    /** The mean moment at which a stage began. */
    long meanBegin(int stage) {
        double sum = 0;
        double moment = 0;
        for (int b = 0; b < begins[stage].length; b++) {
            double all = Arrays.stream(weight[stage][b]).sum();
            sum += all;
            moment += all * (begins[stage][b] - begins[stage][0]);
        }
        return begins[stage][0] + Math.round(moment / sum);
    }
}
