package rootcast.outlook;

import java.time.Instant;

/**
 * How far a batch is at an instant, in stages done, 0 to 3: with probability 0.1, 0.5 and 0.9 no further than this.
 */
public record ProgressPoint(Instant at, double p10, double p50, double p90) {}
