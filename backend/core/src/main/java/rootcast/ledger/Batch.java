package rootcast.ledger;

import java.time.Instant;
import rootcast.crop.TrayFormat;

/**
 * Trays of one variety in one tray format, stuck together at one site: the smallest thing that is counted.
 *
 * @param id      as printed on the tray labels
 * @param site    code of the site
 * @param variety code of the variety
 */
public record Batch(String id, String site, String variety, TrayFormat trayFormat, Instant stuckAt) {}
