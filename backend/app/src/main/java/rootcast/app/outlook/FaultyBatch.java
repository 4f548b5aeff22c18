package rootcast.app.outlook;

import rootcast.facts.FactPosition;
import rootcast.ledger.Batch;

/**
 * A batch that could not be computed. It is set apart, so that all others go on, and shown with what went wrong.
 *
 * @param position of its newest entry
 * @param fault    in words; the log has the rest
 */
public record FaultyBatch(Batch batch, FactPosition position, String fault) {}
