package rootcast.outlook;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import rootcast.numerics.Beta;
import rootcast.numerics.BetaBinomial;
import rootcast.numerics.CountDistribution;

/**
 * A number of living plants carried from one fact to the next.
 *
 * <p>Given n alive and a survival share that is Beta, the survivors are beta-binomial. Records cut that off: {@code
 * lost} plants are known dead and {@code shipped} known to have lived, so of n at most n − lost and at least shipped
 * survived. Losses beyond the records stay possible.
 *
 * <p>Source: Skellam 1948, J. Roy. Statist. Soc. B 10:257-261; a sample as in Johnson, Kemp and Kotz 2005, §6.2.
 */
final class CarriedCount {

    /** An uncertain number goes on as this many equally likely ones, each the mean of its share. */
    private static final int SHARES = 32;

    private CarriedCount() {}

    /**
     * Plants left on the bench; empty if the records take more than there can have been.
     *
     * @param survival share that lives on; empty if all do, and then no loss but the recorded ones has happened
     */
    static Optional<CountDistribution> through(CountDistribution from, Optional<Beta> survival, int lost, int shipped) {
        int gone = lost + shipped;
        if (survival.isEmpty()) {
            return from.last() < gone ? Optional.empty() : Optional.of(from.minus(gone));
        }
        List<Share> shares = Share.of(from).stream()
                .filter(share -> share.alive >= gone)
                .map(share -> share.given(survival.get(), lost, shipped))
                .toList();
        return shares.isEmpty() ? Optional.empty() : Optional.of(mixed(shares, survival.get(), lost, shipped));
    }

    private static CountDistribution mixed(List<Share> shares, Beta survival, int lost, int shipped) {
        if (shares.size() == 1) {
            return kept(shares.get(0).alive, survival, lost, shipped);
        }
        double largest = shares.stream().mapToDouble(Share::logWeight).max().orElseThrow();
        int most = shares.stream().mapToInt(Share::alive).max().orElseThrow();
        double[] weights = new double[most - lost - shipped + 1];
        for (Share share : shares) {
            double weight = Math.exp(share.logWeight - largest);
            CountDistribution part = kept(share.alive, survival, lost, shipped);
            for (int count = part.first(); count <= part.last(); count++) {
                weights[count] += weight * part.probability(count);
            }
        }
        return CountDistribution.ofWeights(0, weights);
    }

    private static CountDistribution kept(int alive, Beta survival, int lost, int shipped) {
        return new BetaBinomial(alive, survival).between(shipped, alive - lost).minus(shipped);
    }

    private record Share(int alive, double logWeight) {

        /** Neighbouring numbers put together until they have their share of the probability. */
        static List<Share> of(CountDistribution from) {
            double enough = from.last() - from.first() < SHARES ? 0 : 1.0 / SHARES;
            List<Share> shares = new ArrayList<>();
            double weight = 0;
            double moment = 0;
            for (int count = from.first(); count <= from.last(); count++) {
                double probability = from.probability(count);
                weight += probability;
                moment += probability * count;
                if (weight > 0 && (weight >= enough || count == from.last())) {
                    shares.add(new Share((int) Math.round(moment / weight), Math.log(weight)));
                    weight = 0;
                    moment = 0;
                }
            }
            return shares;
        }

        /** The share weighed by how likely it makes the records. */
        Share given(Beta survival, int lost, int shipped) {
            return lost + shipped == 0
                    ? this
                    : new Share(
                            alive,
                            logWeight + new BetaBinomial(alive, survival).logProbabilityBetween(shipped, alive - lost));
        }
    }

    /**
     * Plants on the bench after a sample of cells.
     *
     * <p>With s alive in N places, k blanks among n cells have the likelihood C(s, n − k) · C(N − s, k), hypergeometric.
     * What the sample and the records cannot both be is decided for the sample: the plants it saw are there.
     *
     * @param survival share that lives from base to sample; empty if all should, and then nothing is presumed of it
     */
    static CountDistribution sampled(
            int base, Optional<Beta> survival, int lost, int shipped, BatchHistory.Sample sample) {
        int good = sample.good();
        int most = Math.min(base - lost - shipped, sample.places() - sample.blanks());
        if (most <= good) {
            return CountDistribution.certain(good);
        }
        var prior = new BetaBinomial(base, survival.orElse(new Beta(1, 1)));
        double[] logWeights = new double[most - good + 1];
        for (int alive = good; alive < most; alive++) {
            double sampleRatio = (alive + 1.0)
                    / (alive + 1.0 - good)
                    * (sample.places() - alive - sample.blanks())
                    / (sample.places() - alive);
            logWeights[alive + 1 - good] =
                    logWeights[alive - good] + Math.log(prior.ratioUpwardFrom(alive + shipped) * sampleRatio);
        }
        return CountDistribution.ofLogWeights(good, logWeights);
    }
}
