/**
 * Orders and the promises they make. {@link rootcast.app.availability.PlaceOrder} is the use case: hold the head, take
 * the lots and promises as they stand there, ask the core, write all lines or none.
 */
package rootcast.app.availability;
