/**
 * What all facts have in common, whatever they tell of: their place in the one sequence, and how large one may be.
 */
package rootcast.facts;
