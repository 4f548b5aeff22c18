/**
 * Every write: one transaction, one lock, one position, and done once however often it is sent.
 *
 * <p>Decision: docs/decisions/0001-positions-under-one-lock.md. Idempotency-Key follows the IETF draft
 * draft-ietf-httpapi-idempotency-key-header: the same key with the same content gives the first answer again, with other
 * content 422.
 */
package rootcast.app.once;
