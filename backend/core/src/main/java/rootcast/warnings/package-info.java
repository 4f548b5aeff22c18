/**
 * Watches each house against the recipes of the batches in it, and the care that was due, for the known mistakes.
 *
 * <p>{@link rootcast.warnings.Watch} is the way in: hours and facts of one house to the {@link rootcast.warnings.Warning}s
 * that stood. A rule ({@link rootcast.warnings.ClimateRules}, {@link rootcast.warnings.CareRules}) says of one hour
 * whether it was bad; {@link rootcast.warnings.Hysteresis} makes of the hours a warning that is given once while it lasts.
 * {@link rootcast.warnings.WarningLog} says what is new since the last time, {@link rootcast.warnings.QuietHours} when
 * people may be told.
 */
@NullMarked
package rootcast.warnings;

import org.jspecify.annotations.NullMarked;
