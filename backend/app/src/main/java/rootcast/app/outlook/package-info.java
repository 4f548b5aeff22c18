/**
 * Every batch as it stands and as it is expected, kept in memory and brought up to date fact by fact.
 *
 * <p>Decision: docs/decisions/0006-snapshots-from-facts.md. Nothing here is stored; it is folded from the ledger, the hourly series and the
 * profiles whenever the application starts.
 */
package rootcast.app.outlook;
