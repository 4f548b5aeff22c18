/**
 * Every batch as it stands and as it is expected, kept in memory and brought up to date fact by fact.
 *
 * <p>Decision: docs/decisions/0006. Nothing here is stored; it is made from the ledger, the hourly series and the
 * profiles whenever the application starts.
 */
package rootcast.app.outlook;
