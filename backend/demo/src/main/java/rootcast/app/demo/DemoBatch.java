package rootcast.app.demo;

import java.time.Instant;
import rootcast.crop.TrayFormat;

/**
 * A batch of the demo as it was stuck.
 *
 * @param key  name within the demo; the application gives it its own id
 */
public record DemoBatch(
        String key,
        String site,
        String house,
        String variety,
        TrayFormat trayFormat,
        Instant stuckAt,
        int trays,
        int plants,
        Instant recordedAt,
        String recordedBy) {}
