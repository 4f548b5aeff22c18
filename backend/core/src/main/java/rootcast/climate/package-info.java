/**
 * What the sensors say. {@link rootcast.climate.HourlySeries} keeps readings as hour buckets, the same in any order of
 * arrival; {@link rootcast.climate.FilledSeries} is what those hours are taken to have been as of an instant, measured
 * or bridged, and how the house's {@link rootcast.climate.DailyPattern} goes on. {@link rootcast.climate.ReadingQuality}
 * makes an hour out of what several sensors said, with a flag on whatever is odd. {@link rootcast.climate.MoistAir},
 * {@link rootcast.climate.DailyLight} and {@link rootcast.climate.DegreeDays} are formulas with nothing to remember.
 *
 * <p>Hours are counted from 1970-01-01T00:00Z, so a day of a clock change has its real 23 or 25 of them.
 */
@NullMarked
package rootcast.climate;

import org.jspecify.annotations.NullMarked;
