/** What was applied in a house, and until when nobody may go in. A record and a lock, never a proposal. */
package rootcast.app.treatments;
