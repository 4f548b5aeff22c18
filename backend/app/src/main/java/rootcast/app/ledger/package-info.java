/**
 * Sticking batches and recording what happens to them. {@link rootcast.app.ledger.RecordEntry} is the use case: fetch
 * the batch's entries, ask the core's rules, write, all in one transaction.
 */
package rootcast.app.ledger;
