/**
 * Were the outlooks any good? Every finished batch is forecast again from days before it was ready, with what was known
 * then, and held against what happened.
 *
 * <p>{@link rootcast.trackrecord.BackTest} walks through time and makes a {@link rootcast.trackrecord.Case} of each batch
 * and lead, beside two baselines ({@link rootcast.trackrecord.Baselines}); {@link rootcast.trackrecord.Figures} sums cases
 * up with the rules of {@link rootcast.trackrecord.Scores}. {@link rootcast.trackrecord.Hindcast} and {@link
 * rootcast.trackrecord.CalibrationFit} make of the same batches what moves the dates of those that run. The arithmetic in words: docs/models/track-record.md.
 */
@NullMarked
package rootcast.trackrecord;

import org.jspecify.annotations.NullMarked;
