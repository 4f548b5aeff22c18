package rootcast.crop;

import java.util.Map;
import rootcast.saying.Fault;
import rootcast.saying.FaultyValue;

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
        within("rates.varieties", varieties);
        within("rates.sites", sites);
    }

    private static void within(String field, Map<String, Double> factors) {
        factors.forEach((code, factor) -> {
            if (!(factor >= 1 / MOST && factor <= MOST)) {
                throw new FaultyValue(field + "." + code, factor, Fault.BETWEEN, 1 / MOST, MOST);
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
