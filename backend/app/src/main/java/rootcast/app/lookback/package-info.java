/**
 * Batches and the board as they were: made afresh from the tables for an instant that has passed, by the same arithmetic
 * as the live ones.
 *
 * <p>Nothing live is touched. {@link rootcast.app.lookback.PastFacts} says what counts as of an instant.
 */
package rootcast.app.lookback;
