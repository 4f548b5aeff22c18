/**
 * What sales may promise: supply lots on one side, promises on the other, and whether they match.
 *
 * <p>The main path: {@link rootcast.availability.CellSupply} is what one cell holds, {@link
 * rootcast.availability.OpenTrays} says how many trays are open on which date and what limits them, {@link
 * rootcast.availability.MatchRules} accepts or refuses an order, {@link rootcast.availability.Allotment} names the batch
 * behind each promise, {@link rootcast.availability.Shortfall} the promises at risk, {@link
 * rootcast.availability.KeptTogether} the chance of several together. The theorem behind it is in
 * {@code docs/models/availability.md}.
 */
@NullMarked
package rootcast.availability;

import org.jspecify.annotations.NullMarked;
