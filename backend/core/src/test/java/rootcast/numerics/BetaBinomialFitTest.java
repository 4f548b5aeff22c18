package rootcast.numerics;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Random;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import rootcast.numerics.BetaBinomialFit.Group;

class BetaBinomialFitTest {

    /** Rats with tumours in 71 groups, Tarone 1982, as in the hierarchical lab of am207.info (V); 267 of 1 739 in all. */
    private static final int[] TUMOURS = {
        0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 1, 1, 1, 1, 1, 1, 1, 1, 2, 2, 2, 2, 2, 2, 2, 2, 2, 1, 5, 2, 5, 3, 2,
        7, 7, 3, 3, 2, 9, 10, 4, 4, 4, 4, 4, 4, 4, 10, 4, 4, 4, 5, 11, 12, 5, 5, 6, 5, 6, 6, 6, 6, 16, 15, 15, 9, 4
    };

    private static final int[] RATS = {
        20, 20, 20, 20, 20, 20, 20, 19, 19, 19, 19, 18, 18, 17, 20, 20, 20, 20, 19, 19, 18, 18, 25, 24, 23, 20, 20, 20,
        20, 20, 20, 10, 49, 19, 46, 27, 17, 49, 47, 20, 20, 13, 48, 50, 20, 20, 20, 20, 20, 20, 20, 48, 19, 19, 19, 22,
        46, 49, 20, 20, 23, 19, 22, 20, 20, 20, 52, 46, 47, 24, 14
    };

    private static List<Group> rats(int groups) {
        return IntStream.range(0, groups)
                .mapToObj(i -> new Group(TUMOURS[i], RATS[i]))
                .toList();
    }

    @Test
    void theListIsThePublishedOne() {
        assertThat(IntStream.of(TUMOURS).sum()).isEqualTo(267);
        assertThat(IntStream.of(RATS).sum()).isEqualTo(1_739);
    }

    /** BayesGOF vignette (V): Beta(2.304768, 14.079707) for 70 groups; 71 groups computed (C): 2.34161, 14.11481. */
    @Test
    void theRatTumoursAreMostLikelyFromThePublishedBeta() {
        Beta seventy = BetaBinomialFit.maximumLikelihood(rats(70));
        Beta all = BetaBinomialFit.maximumLikelihood(rats(71));

        assertThat(seventy.alpha()).isCloseTo(2.304768, within(1e-3));
        assertThat(seventy.beta()).isCloseTo(14.079707, within(1e-3));
        assertThat(all.alpha()).isCloseTo(2.34161, within(1e-3));
        assertThat(all.beta()).isCloseTo(14.11481, within(1e-3));
    }

    @Test
    void groupsThatDifferLessThanByChanceLeaveNoSpread() {
        Beta even = BetaBinomialFit.maximumLikelihood(Collections.nCopies(20, new Group(5, 10)));

        assertThat(even.mean()).isCloseTo(0.5, within(1e-6));
        assertThat(even.variance()).isLessThan(1e-4);
    }

    @Test
    void withoutAGroupThePriorStands() {
        Beta prior = Beta.ofMean(0.97, 150);

        assertThat(BetaBinomialFit.pooled(List.of(), prior, 0.7, 1)).isEqualTo(prior);
    }

    @Test
    void aPriorGivesWayToManyGroupsAndHardlyToOne() {
        Beta prior = Beta.ofMean(0.97, 150);
        Group eightyPercent = new Group(800, 1_000);

        double afterOne =
                BetaBinomialFit.pooled(List.of(eightyPercent), prior, 0.7, 1).mean();
        double afterMany = BetaBinomialFit.pooled(Collections.nCopies(60, eightyPercent), prior, 0.7, 1)
                .mean();

        assertThat(afterOne).isBetween(0.8, 0.97);
        assertThat(afterMany).isCloseTo(0.8, within(0.01));
        assertThat(afterMany).isLessThan(afterOne);
    }

    /** Groups drawn from Beta(45, 5): mean 0.9, weight 50. */
    @Test
    void aBetaThatGroupsWereDrawnFromIsFoundAgain() {
        var random = new Random(20260302);
        List<Group> groups = new ArrayList<>();
        for (int i = 0; i < 400; i++) {
            double p = share(random, 45, 5);
            groups.add(new Group(
                    (int) IntStream.range(0, 200)
                            .filter(cell -> random.nextDouble() < p)
                            .count(),
                    200));
        }

        Beta found = BetaBinomialFit.maximumLikelihood(groups);

        assertThat(found.mean()).isCloseTo(0.9, within(0.01));
        assertThat(found.alpha() + found.beta()).isBetween(38.0, 65.0);
    }

    /** The 45th smallest of 49 even numbers is Beta(45, 5). */
    private static double share(Random random, int alpha, int beta) {
        double[] even = random.doubles(alpha + beta - 1).sorted().toArray();
        return even[alpha - 1];
    }

    @Test
    void allOrNoneSaysNothingOfALikeliestBeta() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> BetaBinomialFit.maximumLikelihood(List.of(new Group(0, 20))))
                .withMessageContaining("0 of 20");
    }
}
