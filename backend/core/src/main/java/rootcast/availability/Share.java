package rootcast.availability;

/**
 * Trays of one batch that serve one promise.
 *
 * @param batch id of the batch
 */
public record Share(String batch, int trays) {}
