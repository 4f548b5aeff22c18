package rootcast.app.demo;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Map;

/**
 * True medium temperature of every simulated house at every full hour: what the cuttings felt, as against what the
 * probes showed.
 *
 * @param fromInclusive a full hour
 * @param hourlyC       by house; the first value is at {@code fromInclusive}, °C
 */
record MediumHistory(Instant fromInclusive, Map<String, List<Double>> hourlyC) {

    /** The temperature of the hour that holds {@code at}, °C. */
    double mediumC(String house, Instant at) {
        long hour = Duration.between(fromInclusive, at).toHours();
        List<Double> values = hourlyC.get(house);
        if (values == null || at.isBefore(fromInclusive) || hour >= values.size()) {
            throw new IllegalArgumentException("no simulated temperature for %s at %s".formatted(house, at));
        }
        return values.get(Math.toIntExact(hour));
    }

    /** The first moment that is no longer covered. */
    Instant untilExclusive() {
        int hours = hourlyC.values().stream().mapToInt(List::size).min().orElse(0);
        return fromInclusive.plus(Duration.ofHours(hours));
    }
}
