/**
 * The immutable snapshot of all facts up to a position that every reader shares: published in one step by {@code flow},
 * locked by nobody. Each room keeps its own part of it and says what that holds.
 *
 * <p>Decision: docs/decisions/0006-snapshots-from-facts.md.
 */
package rootcast.app.snapshot;
