package rootcast.learning;

import java.util.Arrays;

/** Three by three, for the three stages of one batch. */
final class Matrix3 {

    static final int N = 3;

    private Matrix3() {}

    static double[][] zero() {
        return new double[N][N];
    }

    /** {@code everywhere} in all elements and {@code diagonal} more on the diagonal. */
    static double[][] of(double everywhere, double diagonal) {
        double[][] result = zero();
        for (int i = 0; i < N; i++) {
            Arrays.fill(result[i], everywhere);
            result[i][i] += diagonal;
        }
        return result;
    }

    static double determinant(double[][] m) {
        return m[0][0] * (m[1][1] * m[2][2] - m[1][2] * m[2][1])
                - m[0][1] * (m[1][0] * m[2][2] - m[1][2] * m[2][0])
                + m[0][2] * (m[1][0] * m[2][1] - m[1][1] * m[2][0]);
    }

    /** Whether a symmetric matrix is positive definite: its leading minors are (Sylvester). */
    static boolean isPositive(double[][] m) {
        return m[0][0] > 0 && m[0][0] * m[1][1] - m[0][1] * m[1][0] > 0 && determinant(m) > 0;
    }

    static double[][] inverse(double[][] m) {
        double determinant = determinant(m);
        double[][] result = zero();
        for (int i = 0; i < N; i++) {
            for (int j = 0; j < N; j++) {
                int a = (j + 1) % N;
                int b = (j + 2) % N;
                int c = (i + 1) % N;
                int d = (i + 2) % N;
                result[i][j] = (m[a][c] * m[b][d] - m[a][d] * m[b][c]) / determinant;
            }
        }
        return result;
    }

    static double[][] times(double[][] m, double[][] n) {
        double[][] result = zero();
        for (int i = 0; i < N; i++) {
            for (int j = 0; j < N; j++) {
                result[i][j] = m[i][0] * n[0][j] + m[i][1] * n[1][j] + m[i][2] * n[2][j];
            }
        }
        return result;
    }

    static double[] times(double[][] m, double[] x) {
        double[] result = new double[N];
        for (int i = 0; i < N; i++) {
            result[i] = m[i][0] * x[0] + m[i][1] * x[1] + m[i][2] * x[2];
        }
        return result;
    }

    /** m + factor · n */
    static double[][] plus(double[][] m, double factor, double[][] n) {
        double[][] result = zero();
        for (int i = 0; i < N; i++) {
            for (int j = 0; j < N; j++) {
                result[i][j] = m[i][j] + factor * n[i][j];
            }
        }
        return result;
    }

    /** x + factor · y */
    static double[] plus(double[] x, double factor, double[] y) {
        return new double[] {x[0] + factor * y[0], x[1] + factor * y[1], x[2] + factor * y[2]};
    }

    static double dot(double[] x, double[] y) {
        return x[0] * y[0] + x[1] * y[1] + x[2] * y[2];
    }

    static double sum(double[] x) {
        return x[0] + x[1] + x[2];
    }

    static double sum(double[][] m) {
        return sum(m[0]) + sum(m[1]) + sum(m[2]);
    }
}
