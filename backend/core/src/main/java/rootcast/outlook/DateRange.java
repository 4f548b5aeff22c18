package rootcast.outlook;

import java.time.Instant;

/**
 * Early, middling and late date of one event: it has happened by then with probability 0.1, 0.5 and 0.9.
 *
 * <p>Each may be {@link DateDistribution#NEVER}. All equal means that the event was seen.
 */
public record DateRange(Instant p10, Instant p50, Instant p90) {}
