/** Batches that already stand on the benches, from a table: looked at in a preview before they are written. */
package rootcast.app.ledger.csv;
