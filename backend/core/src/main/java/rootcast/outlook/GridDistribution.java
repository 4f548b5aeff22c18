package rootcast.outlook;

import rootcast.numerics.FirstTrue;

/** A distribution on a line whose density is given at equal steps and runs straight between them; zero outside. */
final class GridDistribution {

    private final double[] density;
    private final double first;
    private final double step;

    /** {@code below[i]} is the probability, times a factor, below node i. */
    private final double[] below;

    /** @param density not normalised; not all of it zero */
    GridDistribution(double[] density, double first, double step) {
        this.density = density;
        this.first = first;
        this.step = step;
        this.below = new double[density.length];
        for (int i = 1; i < density.length; i++) {
            below[i] = below[i - 1] + step * (density[i - 1] + density[i]) / 2;
        }
    }

    double quantile(double probability) {
        int last = density.length - 1;
        double wanted = probability * below[last];
        int node = FirstTrue.in(1, last, i -> below[i] >= wanted);
        double left = density[node - 1];
        double slope = (density[node] - left) / step;
        double rest = wanted - below[node - 1];
        // The root of left · u + slope · u² / 2 = rest, written so that a slope of zero is no exception.
        double root = Math.sqrt(Math.max(0, left * left + 2 * slope * rest));
        double part = rest <= 0 ? 0 : 2 * rest / (left + root);
        return first + (node - 1) * step + Math.min(part, step);
    }
}
