/**
 * What happened to every batch, append-only and double-entry in plants.
 *
 * <p>Read in this order: {@link rootcast.ledger.Entry} is one fact; {@link rootcast.ledger.BatchFold} replays a batch's
 * facts in the order they happened and is the only authority on what they add up to; {@link rootcast.ledger.EntryRules}
 * decides whether a new fact may be written; {@link rootcast.ledger.BatchState} is the sum at an instant.
 *
 * <p>Nothing recorded is edited. A mistake gets a {@link rootcast.ledger.What.Reversal}; a fact that arrives late posts
 * what it changes, each posting at its own instant, so the order of arrival does not matter
 * (docs/decisions/0004).
 */
@NullMarked
package rootcast.ledger;

import org.jspecify.annotations.NullMarked;
