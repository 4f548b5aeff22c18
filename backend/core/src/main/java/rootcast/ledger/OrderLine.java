package rootcast.ledger;

import java.util.UUID;

/**
 * The promise that shipped trays fulfil.
 *
 * @param line 1 for the first line of the order
 */
public record OrderLine(UUID order, int line) {}
