package rootcast.trackrecord;

import java.util.List;

/**
 * How often ranges of 80 % held, and how well that is known.
 *
 * <p>{@code low} to {@code high} is the 90 % interval of the share by Wilson's score, each case counting as one trial: batches of one house
 * that were forecast in one week share their weather, so the true interval is wider.
 *
 * <p>Source: Wilson 1927, J. Amer. Statist. Assoc. 22:209-212; Agresti and Coull 1998, Amer. Statistician 52:119-126 (it keeps its
 * level with few trials; from memory).
 *
 * @param n     cases
 * @param share of them that were ready within their range; not a number without a case
 */
public record HeldShare(int n, double share, double low, double high) {

    /** What the ranges state. */
    public static final double STATED = 0.8;

    private static final double Z = 1.6448536269514722;

    public static HeldShare of(List<Case> cases) {
        return of(cases.size(), cases.stream().mapToDouble(Case::inside80).sum());
    }

    /**
     * @param held number of cases in which the range held; a case known to an interval only may count in part
     */
    static HeldShare of(int n, double held) {
        if (n == 0) {
            return new HeldShare(0, Double.NaN, Double.NaN, Double.NaN);
        }
        double share = held / n;
        double square = Z * Z / n;
        double middle = (share + square / 2) / (1 + square);
        double reach = Math.sqrt(square * share * (1 - share) + square * square / 4) / (1 + square);
        return new HeldShare(n, share, Math.max(0, middle - reach), Math.min(1, middle + reach));
    }
}
