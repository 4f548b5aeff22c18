/**
 * What each house and batch needs on a day, and what was done about it.
 *
 * <p>{@link rootcast.rounds.Rounds} is the way in: from what was seen of a batch, its recipe, its outlook and the care
 * recorded so far to the {@link rootcast.rounds.RoundItem}s due. {@link rootcast.rounds.BatchTasks} and {@link
 * rootcast.rounds.HouseTasks} hold one rule a method; how often comes from {@link rootcast.rounds.Rhythm}. A {@link
 * rootcast.rounds.Treatment} keeps people out of a house until its re-entry interval has passed.
 */
@NullMarked
package rootcast.rounds;

import org.jspecify.annotations.NullMarked;
