package rootcast.crop;

import java.util.Map;
import java.util.stream.Stream;

/**
 * How much faster than the crop a variety or a site develops: 1.05 is 5 % faster. What is not named runs as the crop does.
 *
 * @param varieties by code of the variety
 * @param sites     by code of the site
 */
public record RateFactors(Map<String, Double> varieties, Map<String, Double> sites) {

    public static final RateFactors NONE = new RateFactors(Map.of(), Map.of());

    /** A variety that differs more is another crop. */
    private static final double MOST = 4;

    public RateFactors {
        varieties = Map.copyOf(varieties);
        sites = Map.copyOf(sites);
        Stream.concat(varieties.entrySet().stream(), sites.entrySet().stream()).forEach(factor -> {
            if (!(factor.getValue() >= 1 / MOST && factor.getValue() <= MOST)) {
                throw new IllegalArgumentException("rate factor %s of '%s' must lie between %s and %s"
                        .formatted(factor.getValue(), factor.getKey(), 1 / MOST, MOST));
            }
        });
    }

    public double of(String variety, String site) {
        return varieties.getOrDefault(variety, 1.0) * sites.getOrDefault(site, 1.0);
    }

    double slowest() {
        return least(varieties) * least(sites);
    }

    private static double least(Map<String, Double> factors) {
        return factors.values().stream().mapToDouble(Double::doubleValue).reduce(1, Math::min);
    }
}
