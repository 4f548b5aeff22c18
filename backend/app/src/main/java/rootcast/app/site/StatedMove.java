package rootcast.app.site;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import rootcast.outlook.UsualMove;

/**
 * What was said of where batches of a house usually go on to.
 *
 * @param move null if they stay until they ship
 */
public record StatedMove(String house, @Nullable UsualMove move, Instant recordedAt) {}
