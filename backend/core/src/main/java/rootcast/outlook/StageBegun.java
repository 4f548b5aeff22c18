package rootcast.outlook;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * The stage that a batch is in, whose begin nobody saw: for each node of its date a begin and a rate that go with it.
 *
 * <p>The date follows from the reference-days that were still to come at a moment A after all begins, days / M − gained(b, A); it is
 * their quantiles that the nodes stand for. The rate of a node is the mean of ln M there, straight in those days
 * (regression); its begin is the moment that makes the days come out.
 */
final class StageBegun {

    private static final double LEAST_DAYS = 1e-6;

    private final int stage;
    private final StagePath path;
    private final long first;
    private final long after;
    private final double untilAfter;
    private final double days;

    /** By begin and rate, put one after the other. */
    private final double[] left;

    private final double[] logRate;
    private final double[] weights;

    final long[] beginByNode = new long[RateBelief.NODES];
    final double[] multiplierByNode = new double[RateBelief.NODES];

    StageBegun(int stage, StageChain chain, StagePath path) {
        this.stage = stage;
        this.path = path;
        this.days = path.daysAtReference(stage);
        long[] begins = chain.begins(stage);
        this.first = begins[0];
        this.after = begins[begins.length - 1];
        this.untilAfter = path.between(stage, first, after);
        int count = begins.length * StageChain.NODES;
        left = new double[count];
        logRate = new double[count];
        weights = new double[count];
        for (int b = 0; b < begins.length; b++) {
            double gained = path.between(stage, begins[b], after);
            for (int i = 0; i < StageChain.NODES; i++) {
                int at = b * StageChain.NODES + i;
                double multiplier = chain.multiplier(i);
                left[at] = days / multiplier - gained;
                logRate[at] = Math.log(multiplier);
                weights[at] = chain.weights(stage)[b][i];
            }
        }
        fill();
    }

    private void fill() {
        double sum = Arrays.stream(weights).sum();
        double meanLeft = mean(left, sum);
        double meanLog = mean(logRate, sum);
        double covariance = 0;
        double variance = 0;
        for (int i = 0; i < left.length; i++) {
            covariance += weights[i] * (left[i] - meanLeft) * (logRate[i] - meanLog);
            variance += weights[i] * (left[i] - meanLeft) * (left[i] - meanLeft);
        }
        double slope = variance > 0 ? covariance / variance : 0;
        int[] slowestFirst = IntStream.range(0, left.length)
                .boxed()
                .sorted(Comparator.comparingDouble((Integer i) -> -left[i]))
                .mapToInt(i -> i)
                .toArray();
        int at = 0;
        double below = 0;
        double before = left[slowestFirst[0]];
        double belowBefore = 0;
        for (int node = 0; node < RateBelief.NODES; node++) {
            double wanted = RateBelief.nodeProbability(node) * sum;
            while (at < slowestFirst.length - 1 && below + weights[slowestFirst[at]] / 2 < wanted) {
                before = left[slowestFirst[at]];
                belowBefore = below + weights[slowestFirst[at]] / 2;
                below += weights[slowestFirst[at]];
                at++;
            }
            double here = left[slowestFirst[at]];
            double belowHere = below + weights[slowestFirst[at]] / 2;
            double part = belowHere > belowBefore ? Math.min(1, (wanted - belowBefore) / (belowHere - belowBefore)) : 1;
            set(node, before + part * (here - before), meanLog, slope, meanLeft);
        }
    }

    private double mean(double[] values, double sum) {
        double moment = 0;
        for (int i = 0; i < values.length; i++) {
            moment += weights[i] * values[i];
        }
        return moment / sum;
    }

    private void set(int node, double daysLeft, double meanLog, double slope, double meanLeft) {
        double multiplier = Math.exp(meanLog + slope * (daysLeft - meanLeft));
        double gained = Math.max(0, Math.min(untilAfter, days / multiplier - daysLeft));
        long begin = path.reach(stage, first, untilAfter - gained);
        beginByNode[node] = Math.min(begin, after);
        double whole = daysLeft + path.between(stage, beginByNode[node], after);
        multiplierByNode[node] = days / Math.max(LEAST_DAYS, whole);
    }
}
