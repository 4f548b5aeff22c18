/**
 * Arithmetic of the feed tank and of a rate read off a label.
 *
 * <p>{@link rootcast.feed.Stock} goes between ppm, weight and injector, {@link rootcast.feed.FeedSalts} between EC and ppm,
 * {@link rootcast.feed.LabelRate} from a rate that the label gives to an amount. Nothing here knows a product or proposes
 * a rate.
 */
@NullMarked
package rootcast.feed;

import org.jspecify.annotations.NullMarked;
