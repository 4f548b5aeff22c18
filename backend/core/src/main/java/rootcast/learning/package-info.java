/**
 * What batches teach about their crop: days, spread, survival and, where the data tells them, cardinal temperatures.
 *
 * <p>{@link rootcast.learning.Learning} is the way in: {@link rootcast.learning.BatchRecord}s and a profile go in, a
 * {@link rootcast.learning.LearnedProfile} with its {@link rootcast.learning.Evidence} comes out. {@link
 * rootcast.learning.WarmDays} is what a batch was given, {@link rootcast.learning.StageTimes} what that says of its
 * stages, {@link rootcast.learning.RateFit} the estimate over all batches, {@link
 * rootcast.learning.CardinalSearch} the search for cardinal temperatures. Nothing depends on the order of the records.
 *
 * <p>The model with its equations: docs/models/learning.md; why this one: docs/decisions/0008.
 */
@NullMarked
package rootcast.learning;

import org.jspecify.annotations.NullMarked;
