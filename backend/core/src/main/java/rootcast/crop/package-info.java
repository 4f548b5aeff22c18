/** What is grown, in what, and how: crop with its profile and its recipe, variety, tray format. */
@NullMarked
package rootcast.crop;

import org.jspecify.annotations.NullMarked;
