/**
 * The map. Every package is one capability and bears the trade's word for it; time and randomness are arguments.
 *
 * <p>Direction, left may use right and never back: {@code board → availability → outlook → ledger → crop → site} and
 * {@code outlook → climate → numerics}; {@code learning} and {@code trackrecord} look back over what the outlook made of
 * finished batches, and nothing looks at them. Facts do not know their interpretations: {@code ledger} cannot see
 * {@code outlook}. {@code CoreArchitectureTest} holds it.
 *
 * <p>Where to start: {@link rootcast.ledger.Entry} is what happened, {@link rootcast.ledger.BatchState} is what it adds
 * up to, {@code rootcast.outlook} says when and how many, {@code rootcast.availability} what may be promised.
 */
package rootcast;
