package rootcast.scenario;

import java.util.Map;
import java.util.TreeMap;
import org.apache.commons.statistics.distribution.BetaDistribution;

/**
 * A share of cases that come in clusters, with exact binomial 95 % bounds for as many independent cases as they are worth.
 *
 * <p>With x of n in cluster i the share's variance is m/(m − 1) · Σ (xᵢ − p nᵢ)² / n² over m clusters; the cases are worth
 * n_e = p (1 − p) / variance, n at most, and the bounds are those of Clopper and Pearson for p n_e of n_e.
 *
 * <p>Source: Korn and Graubard 1998, Survey Methodology 24:193-201 (from memory, without their correction for the degrees
 * of freedom); Clopper and Pearson 1934, Biometrika 26:404-413.
 */
final class ClusteredShare {

    private static final double TAIL = 0.025;

    private final Map<String, int[]> clusters = new TreeMap<>();
    private int hits;
    private int cases;

    void add(String cluster, boolean isHit) {
        int[] counts = clusters.computeIfAbsent(cluster, any -> new int[2]);
        counts[0] += isHit ? 1 : 0;
        counts[1]++;
        hits += isHit ? 1 : 0;
        cases++;
    }

    int cases() {
        return cases;
    }

    /** NaN without a case. */
    double share() {
        return (double) hits / cases;
    }

    /** As many independent cases tell as much. */
    double worth() {
        double share = share();
        double squares = 0;
        for (int[] counts : clusters.values()) {
            double apart = counts[0] - share * counts[1];
            squares += apart * apart;
        }
        int m = clusters.size();
        double variance = m < 2 ? 0 : squares * m / (m - 1) / cases / cases;
        return variance == 0 ? cases : Math.min(cases, share * (1 - share) / variance);
    }

    double low() {
        return low(share() * worth(), worth());
    }

    double high() {
        return high(share() * worth(), worth());
    }

    /** Clopper and Pearson's lower bound for so many hits in so many cases, which need not be whole. */
    static double low(double hits, double cases) {
        return hits == 0 ? 0 : BetaDistribution.of(hits, cases - hits + 1).inverseCumulativeProbability(TAIL);
    }

    static double high(double hits, double cases) {
        return hits == cases ? 1 : BetaDistribution.of(hits + 1, cases - hits).inverseCumulativeProbability(1 - TAIL);
    }
}
