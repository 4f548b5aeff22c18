/**
 * Mathematics without a word of the trade: {@link rootcast.numerics.CountDistribution} is a distribution over whole
 * numbers, {@link rootcast.numerics.BetaBinomial} makes one, {@link rootcast.numerics.Beta} is an uncertain
 * probability, {@link rootcast.numerics.BetaBinomialFit} the one that groups were drawn from, {@link
 * rootcast.numerics.Shrinkage} what few observations of each of many are worth, {@link rootcast.numerics.FirstTrue} a
 * binary search. Special functions come from commons-numbers.
 */
@NullMarked
package rootcast.numerics;

import org.jspecify.annotations.NullMarked;
