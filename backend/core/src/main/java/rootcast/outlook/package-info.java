/**
 * When a batch will be ready and how many trays it will give, as distributions.
 *
 * <p>{@link rootcast.outlook.OutlookModel} is the way in. Dates: {@link rootcast.outlook.DevelopmentRate} at one
 * temperature, {@link rootcast.outlook.DevelopmentCurve} summed over a house's hours, {@link
 * rootcast.outlook.HouseCurves} the cache of them, {@link rootcast.outlook.StagePath} one batch along them, {@link
 * rootcast.outlook.RateBelief} how fast the batch is. Numbers: {@link rootcast.outlook.StageSurvival} and {@link
 * rootcast.outlook.Survivors}. What the model is told of a batch is {@link rootcast.outlook.BatchHistory}; what it
 * answers is {@link rootcast.outlook.Outlook}.
 */
@NullMarked
package rootcast.outlook;

import org.jspecify.annotations.NullMarked;
