package rootcast.trackrecord;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.Instant;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import rootcast.outlook.DateRange;
import rootcast.trackrecord.Trust.Mend;
import rootcast.trackrecord.Trust.Verdict;

class TrustTest {

    private static final Instant READY = Instant.parse("2026-05-04T12:00:00Z");

    private static Case one(boolean held, double errorDays, boolean lookedAt, boolean carriedUnsaid) {
        return new Case(
                "b",
                "c",
                7,
                READY,
                READY,
                READY,
                new DateRange(READY, READY, READY),
                errorDays,
                held ? 1 : 0,
                held ? 1 : 0,
                held ? 1 : 0,
                0,
                0,
                0,
                0,
                null,
                new Case.Circumstances("S", LocalDate.of(2026, 5, 4), lookedAt, carriedUnsaid));
    }

    /** Errors of 2 days to either side in turn, so that they cancel out, and one more day for all. */
    private static List<Case> cases(
            int n, IntPredicate held, double offDays, IntPredicate looked, IntPredicate carried) {
        List<Case> cases = new ArrayList<>();
        for (int i = 0; i < n; i++) {
            cases.add(one(held.test(i), offDays + (i % 2 == 0 ? 2 : -2), looked.test(i), carried.test(i)));
        }
        return cases;
    }

    /**
     * 90 % Wilson intervals of R 4.2.2, {@code prop.test(x, n, conf.level = 0.9, correct = FALSE)}; the same worked out
     * from (2x + z² ± z·√(z² + 4x(1 − x/n))) / (2(n + z²)), z = 1.644854.
     */
    @ParameterizedTest(name = "{1} of {0}")
    @CsvSource({"10, 8, 0.541, 0.931", "60, 48, 0.703, 0.871", "20, 20, 0.881, 1", "8, 0, 0, 0.253"})
    void theShareIsKnownAsWellAsThatManyTrialsTell(int n, double held, double low, double high) {
        HeldShare share = HeldShare.of(n, held);

        assertThat(share.share()).isEqualTo(held / n);
        assertThat(share.low()).isCloseTo(low, within(1e-3));
        assertThat(share.high()).isCloseTo(high, within(1e-3));
    }

    @Test
    void withoutACaseNothingIsSaid() {
        Trust trust = Trust.of(List.of());

        assertThat(trust.verdict()).isEqualTo(Verdict.TOO_FEW);
        assertThat(trust.held().share()).isNaN();
        assertThat(trust.mends()).isEmpty();
    }

    @Test
    void sevenBatchesAreTooFewAndEightThatAllHeldAreNoProofOfTooWide() {
        assertThat(Trust.of(cases(7, i -> true, 0, i -> true, i -> false)).verdict())
                .isEqualTo(Verdict.TOO_FEW);
        // 8 of 8: from 0.747 on, which 0.8 is within.
        assertThat(Trust.of(cases(8, i -> true, 0, i -> true, i -> false)).verdict())
                .isEqualTo(Verdict.HOLDS);
    }

    @Test
    void fourInFiveHolds() {
        Trust trust = Trust.of(cases(40, i -> i % 5 != 0, 3, i -> false, i -> true));

        assertThat(trust.verdict()).isEqualTo(Verdict.HOLDS);
        assertThat(trust.mends()).as("nothing to mend").isEmpty();
    }

    @Test
    void ofBatchesThatWereCarriedTheirNextHouseShouldBeSaid() {
        Trust third = Trust.of(cases(30, i -> i % 2 == 0, 0, i -> true, i -> i % 3 == 0));
        Trust fewer = Trust.of(cases(30, i -> i % 2 == 0, 0, i -> true, i -> i % 4 == 0));

        assertThat(third.verdict()).isEqualTo(Verdict.TOO_NARROW);
        assertThat(third.mends()).containsExactly(Mend.SAY_WHERE_THEY_GO);
        assertThat(fewer.mends()).isEmpty();
    }

    @Test
    void whereMostWereEnteredWithoutALookCellsShouldBeLookedAt() {
        assertThat(Trust.of(cases(30, i -> i % 2 == 0, 0, i -> i % 3 == 0, i -> false))
                        .mends())
                .containsExactly(Mend.LOOK_AT_CELLS);
    }

    /** Errors of ±2 about the mean: the standard error of 30 is 2.03/√30 = 0.371, twice of it 0.73. */
    @ParameterizedTest
    @CsvSource({"0.7, false", "0.8, true", "-0.8, true"})
    void whatIsLateOnTheWholeWantsALearnedProfile(double offDays, boolean isOff) {
        List<Mend> mends = Trust.of(cases(30, i -> i % 2 == 0, offDays, i -> true, i -> false))
                .mends();

        assertThat(mends.contains(Mend.LEARN_THE_PROFILE)).isEqualTo(isOff);
    }

    @Test
    void rangesThatHoldAlwaysAreTooWide() {
        assertThat(Trust.of(cases(30, i -> true, 0, i -> true, i -> false)).verdict())
                .isEqualTo(Verdict.TOO_WIDE);
    }
}
