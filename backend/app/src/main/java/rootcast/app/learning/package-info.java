/**
 * What a crop's batches teach, proposed as the next version of its profile. Nothing changes until somebody adopts it.
 */
package rootcast.app.learning;
