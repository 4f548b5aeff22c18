package rootcast.trackrecord;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Predicate;

/**
 * Whether the dates of some batches can be trusted by their own record, and what would mend it where they cannot.
 *
 * @param mends what would help, the likeliest first; empty where the ranges hold or too few batches are known
 */
public record Trust(Verdict verdict, HeldShare held, List<Mend> mends) {

    /** What the record says of the ranges. */
    public enum Verdict {
        /** 80 % lies within what is known of the share. */
        HOLDS,
        /** They hold more seldom than they say: dates cannot be trusted. */
        TOO_NARROW,
        /** They hold more often than they say: trays could be promised sooner. */
        TOO_WIDE,
        /** Fewer batches than {@value #FEWEST}: nothing can be said yet. */
        TOO_FEW
    }

    /** What a grower can do about it. */
    public enum Mend {
        /** Most were entered ready without a look at cells in the days before: it is not known when they were. */
        LOOK_AT_CELLS,
        /** Many were carried to another house on the way and nobody had said so. */
        SAY_WHERE_THEY_GO,
        /** All are late or all early: the days of the profile are off. */
        LEARN_THE_PROFILE
    }

    /** As for weighing a version of a profile (learning.md). Our choice. */
    public static final int FEWEST = 8;

    /** A third was carried: more than an odd batch. Common practice, no source. */
    private static final double MANY_CARRIED = 1.0 / 3;

    private static final double MOST = 0.5;

    /** A mean error further from 0 than so many of its standard errors is no chance: 95 %. */
    private static final double TELLING = 1.96;

    public static Trust of(List<Case> cases) {
        HeldShare held = HeldShare.of(cases);
        Verdict verdict = verdict(held);
        return new Trust(
                verdict,
                held,
                verdict == Verdict.HOLDS || verdict == Verdict.TOO_FEW ? List.of() : mends(verdict, cases));
    }

    private static Verdict verdict(HeldShare held) {
        if (held.n() < FEWEST) {
            return Verdict.TOO_FEW;
        }
        if (held.high() < HeldShare.STATED) {
            return Verdict.TOO_NARROW;
        }
        return held.low() > HeldShare.STATED ? Verdict.TOO_WIDE : Verdict.HOLDS;
    }

    private static List<Mend> mends(Verdict verdict, List<Case> cases) {
        List<Mend> mends = new ArrayList<>();
        if (share(cases, each -> !each.circumstances().lookedAt()) > MOST) {
            mends.add(Mend.LOOK_AT_CELLS);
        }
        if (verdict == Verdict.TOO_NARROW
                && share(cases, each -> each.circumstances().carriedUnsaid()) >= MANY_CARRIED) {
            mends.add(Mend.SAY_WHERE_THEY_GO);
        }
        if (isOffOnTheWhole(cases)) {
            mends.add(Mend.LEARN_THE_PROFILE);
        }
        return List.copyOf(mends);
    }

    private static double share(List<Case> cases, Predicate<Case> of) {
        return (double) cases.stream().filter(of).count() / cases.size();
    }

    private static boolean isOffOnTheWhole(List<Case> cases) {
        int n = cases.size();
        double mean = cases.stream().mapToDouble(Case::errorDays).sum() / n;
        double squares = cases.stream()
                .mapToDouble(each -> (each.errorDays() - mean) * (each.errorDays() - mean))
                .sum();
        return Math.abs(mean) > TELLING * Math.sqrt(squares / (n - 1) / n);
    }
}
