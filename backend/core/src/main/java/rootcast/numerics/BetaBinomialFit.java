package rootcast.numerics;

import java.util.List;
import org.apache.commons.numbers.gamma.Digamma;
import org.apache.commons.numbers.gamma.LogBeta;
import org.apache.commons.numbers.gamma.Trigamma;

/**
 * The Beta from which the success probabilities of several groups were drawn, from the successes in each.
 *
 * <p>Maximises Σ ln BetaBinomial(k | n, α, β) over logit(mean) and ln(weight), weight = α + β, by Newton's method with
 * halved steps. Pooled with a prior the same sum gets a normal penalty on both, so that few groups leave the prior where
 * it was; without one, groups that differ less than chance would have them send the weight to infinity, which is then
 * kept at {@value #MOST_WEIGHT}.
 *
 * <p>Source: Skellam 1948, J. Roy. Statist. Soc. B 10:257-261 (likelihood); Griffiths 1973, Biometrics 29:637-648
 * (maximum likelihood).
 */
public final class BetaBinomialFit {

    private static final double MOST_WEIGHT = 1e6;
    private static final int MOST_STEPS = 200;
    private static final double CONVERGED = 1e-10;

    /** Successes among trials. */
    public record Group(int successes, int trials) {
        public Group {
            if (!(0 <= successes && successes <= trials)) {
                throw new IllegalArgumentException("%d of %d must rise from 0".formatted(successes, trials));
            }
        }
    }

    private final List<Group> groups;
    private final double logitPrior;
    private final double logitPrecision;
    private final double logWeightPrior;
    private final double logWeightPrecision;

    private BetaBinomialFit(List<Group> groups, Beta prior, double logitSpread, double logWeightSpread) {
        this.groups = groups;
        this.logitPrior = Math.log(prior.alpha() / prior.beta());
        this.logWeightPrior = Math.log(prior.alpha() + prior.beta());
        this.logitPrecision = 1 / (logitSpread * logitSpread);
        this.logWeightPrecision = 1 / (logWeightSpread * logWeightSpread);
    }

    /** @throws IllegalArgumentException unless there is both a success and a failure */
    public static Beta maximumLikelihood(List<Group> groups) {
        long successes = groups.stream().mapToLong(Group::successes).sum();
        long trials = groups.stream().mapToLong(Group::trials).sum();
        if (successes == 0 || successes == trials) {
            throw new IllegalArgumentException(
                    "%d of %d in all: no Beta is the likeliest".formatted(successes, trials));
        }
        Beta start = Beta.ofMean((double) successes / trials, 10);
        return new BetaBinomialFit(groups, start, Double.POSITIVE_INFINITY, Double.POSITIVE_INFINITY).best();
    }

    /**
     * @param logitSpread     standard deviation of logit(mean) around the prior's
     * @param logWeightSpread standard deviation of ln(weight) around the prior's
     * @return the prior if there is no group
     */
    public static Beta pooled(List<Group> groups, Beta prior, double logitSpread, double logWeightSpread) {
        return groups.isEmpty() ? prior : new BetaBinomialFit(groups, prior, logitSpread, logWeightSpread).best();
    }

    private Beta best() {
        double logit = logitPrior;
        double logWeight = logWeightPrior;
        double value = objective(logit, logWeight);
        for (int step = 0; step < MOST_STEPS; step++) {
            double[] move = newton(logit, logWeight);
            double scale = 1;
            double next = Double.NEGATIVE_INFINITY;
            while (scale > CONVERGED && !((next = valueAt(logit, logWeight, move, scale)) >= value)) {
                scale /= 2;
            }
            if (scale <= CONVERGED) {
                break;
            }
            logit += scale * move[0];
            logWeight = weightWithin(logWeight + scale * move[1]);
            boolean converged = Math.hypot(move[0], move[1]) < CONVERGED;
            value = next;
            if (converged) {
                break;
            }
        }
        return beta(logit, logWeight);
    }

    private double valueAt(double logit, double logWeight, double[] move, double scale) {
        return objective(logit + scale * move[0], weightWithin(logWeight + scale * move[1]));
    }

    private static double weightWithin(double logWeight) {
        return Math.min(logWeight, Math.log(MOST_WEIGHT));
    }

    private static Beta beta(double logit, double logWeight) {
        double weight = Math.exp(logWeight);
        return new Beta(weight / (1 + Math.exp(-logit)), weight / (1 + Math.exp(logit)));
    }

    private double objective(double logit, double logWeight) {
        Beta at = beta(logit, logWeight);
        double sum = -logitPrecision * square(logit - logitPrior) / 2
                - logWeightPrecision * square(logWeight - logWeightPrior) / 2;
        double whole = LogBeta.value(at.alpha(), at.beta());
        for (Group group : groups) {
            sum += LogBeta.value(group.successes + at.alpha(), group.trials - group.successes + at.beta()) - whole;
        }
        return sum;
    }

    /** The step uphill: Newton's where the surface is a hill, else along the slope. */
    private double[] newton(double logit, double logWeight) {
        Beta at = beta(logit, logWeight);
        Slope slope = new Slope(at);
        groups.forEach(slope::add);
        double weight = at.alpha() + at.beta();
        double mean = at.mean();
        double da = weight * mean * (1 - mean); // ∂α/∂logit = −∂β/∂logit
        double gLogit = da * (slope.a - slope.b) - logitPrecision * (logit - logitPrior);
        double gWeight = at.alpha() * slope.a + at.beta() * slope.b - logWeightPrecision * (logWeight - logWeightPrior);
        double hLogit = da * da * (slope.aa - 2 * slope.ab + slope.bb)
                + da * (1 - 2 * mean) * (slope.a - slope.b)
                - logitPrecision;
        double hWeight = square(at.alpha()) * slope.aa
                + 2 * at.alpha() * at.beta() * slope.ab
                + square(at.beta()) * slope.bb
                + at.alpha() * slope.a
                + at.beta() * slope.b
                - logWeightPrecision;
        double hBoth = da
                * (at.alpha() * slope.aa
                        + (at.beta() - at.alpha()) * slope.ab
                        - at.beta() * slope.bb
                        + slope.a
                        - slope.b);
        double determinant = hLogit * hWeight - hBoth * hBoth;
        if (hLogit < 0 && determinant > 0) {
            return new double[] {
                -(hWeight * gLogit - hBoth * gWeight) / determinant, -(hLogit * gWeight - hBoth * gLogit) / determinant
            };
        }
        return new double[] {gLogit / (1 + Math.abs(hLogit)), gWeight / (1 + Math.abs(hWeight))};
    }

    /** First and second derivatives of the log likelihood by α and β. */
    private static final class Slope {
        private final Beta at;
        private double a;
        private double b;
        private double aa;
        private double bb;
        private double ab;

        Slope(Beta at) {
            this.at = at;
        }

        void add(Group group) {
            double alpha = at.alpha();
            double beta = at.beta();
            int failures = group.trials - group.successes;
            double both = Digamma.value(alpha + beta) - Digamma.value(alpha + beta + group.trials);
            double curve = Trigamma.value(alpha + beta) - Trigamma.value(alpha + beta + group.trials);
            a += Digamma.value(alpha + group.successes) - Digamma.value(alpha) + both;
            b += Digamma.value(beta + failures) - Digamma.value(beta) + both;
            aa += Trigamma.value(alpha + group.successes) - Trigamma.value(alpha) + curve;
            bb += Trigamma.value(beta + failures) - Trigamma.value(beta) + curve;
            ab += curve;
        }
    }

    private static double square(double x) {
        return x * x;
    }
}
