package rootcast.outlook;

import java.time.Instant;

/** How far a batch was planned to be at an instant, in stages done, 0 to 3. */
public record PlannedPoint(Instant at, double progress) {}
