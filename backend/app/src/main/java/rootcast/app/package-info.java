/**
 * The Quarkus application around the core, by the same capability names.
 *
 * <p>Inside each capability {@code rest → use case → core ← store}. A write goes through {@link rootcast.app.once.Once},
 * which gives it a position in its own transaction; {@code flow} then carries it from the ledger to the board. Nothing
 * depends on {@code flow}. Only {@code store} names a database row, only {@code problem} builds an error body, only
 * {@code wiring} reads the system clock.
 */
package rootcast.app;
