/**
 * The daily round: what is due is worked out for every question anew ({@link rootcast.app.rounds.SiteCare}), what was done is
 * recorded together with the observation it asks for ({@link rootcast.app.rounds.RecordCare}).
 */
package rootcast.app.rounds;
