package rootcast.learning;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

/** Products by hand; inverses by cofactors on paper. */
class Matrix3Test {

    private static final double[][] SYMMETRIC = {{2, 1, 0}, {1, 3, 1}, {0, 1, 4}};

    /** Determinant 1·(0 − 24) − 2·(0 − 20) + 3·(0 − 5) = 1. */
    private static final double[][] ANY = {{1, 2, 3}, {0, 1, 4}, {5, 6, 0}};

    private static void are(double[][] m, double[][] expected) {
        for (int i = 0; i < 3; i++) {
            assertThat(m[i]).as("row %d", i).containsExactly(expected[i], within(1e-12));
        }
    }

    @Test
    void determinantsAreByTheirFirstRow() {
        assertThat(Matrix3.determinant(SYMMETRIC)).isEqualTo(2 * 11 - 1 * 4);
        assertThat(Matrix3.determinant(ANY)).isEqualTo(1);
    }

    @Test
    void inversesAreCofactorsOverTheDeterminant() {
        are(Matrix3.inverse(ANY), new double[][] {{-24, 18, 5}, {20, -15, -4}, {-5, 4, 1}});
        are(Matrix3.inverse(SYMMETRIC), new double[][] {
            {11 / 18.0, -4 / 18.0, 1 / 18.0}, {-4 / 18.0, 8 / 18.0, -2 / 18.0}, {1 / 18.0, -2 / 18.0, 5 / 18.0}
        });
    }

    @Test
    void productsAreRowsTimesColumns() {
        are(Matrix3.times(SYMMETRIC, ANY), new double[][] {{2, 5, 10}, {6, 11, 15}, {20, 25, 4}});
        assertThat(Matrix3.times(SYMMETRIC, new double[] {1, 2, 3})).containsExactly(4, 10, 14);
        assertThat(Matrix3.dot(new double[] {1, 2, 3}, new double[] {4, 5, 6})).isEqualTo(32);
    }

    @Test
    void sumsTakeTheSecondByItsFactor() {
        are(Matrix3.plus(SYMMETRIC, 2, ANY), new double[][] {{4, 5, 6}, {1, 5, 9}, {10, 13, 4}});
        assertThat(Matrix3.plus(new double[] {1, 2, 3}, 2, new double[] {4, 5, 6}))
                .containsExactly(9, 12, 15);
        assertThat(Matrix3.sum(new double[] {1, 2, 4})).isEqualTo(7);
        assertThat(Matrix3.sum(ANY)).isEqualTo(22);
    }

    @Test
    void theDiagonalHasMore() {
        are(Matrix3.of(0.5, 2), new double[][] {{2.5, 0.5, 0.5}, {0.5, 2.5, 0.5}, {0.5, 0.5, 2.5}});
    }

    /** Sylvester: each leading minor of these but the first is not over nothing. */
    @Test
    void positiveIsWhatHasPositiveLeadingMinors() {
        assertThat(Matrix3.isPositive(SYMMETRIC)).isTrue();
        assertThat(Matrix3.isPositive(new double[][] {{1, 0.6, 0}, {0.6, 4, 0}, {0, 0, 1}}))
                .as("minors 1, 4 − 0.36 and the same")
                .isTrue();
        for (double[][] none : new double[][][] {
            {{-1, 0, 0}, {0, -1, 0}, {0, 0, 1}},
            {{0, 0, 0}, {0, 1, 0}, {0, 0, 1}},
            {{1, 2, 0}, {2, 1, 0}, {0, 0, -1}},
            {{1, 0, 0}, {0, 0, 0}, {0, 0, 1}},
            {{1, 0, 0}, {0, 1, 0}, {0, 0, -1}},
            {{1, 0, 0}, {0, 1, 0}, {0, 0, 0}},
        }) {
            assertThat(Matrix3.isPositive(none)).isFalse();
        }
    }
}
