/**
 * How long the arithmetic takes. Figures are read as ratios within one run; docs/measurements.md has some with the command.
 */
@NullMarked
package rootcast.bench;

import org.jspecify.annotations.NullMarked;
